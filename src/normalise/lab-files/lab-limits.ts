import type { Place } from '../../findings/index.ts';
import type { LabRole } from '../../model/index.ts';
import { applyRatio, type Ratio } from '../../reference/index.ts';
import { type NumberMarks, readLabDecimal } from '../lab-results/lab-decimal.ts';
import type { FindingLog } from './finding-log.ts';
import { isLabUnit } from './resolve-unit.ts';

export interface Limits {
  readonly mdl: number | null;
  readonly rl: number | null;
}

interface LimitText {
  readonly value: number;
  /** A unit behind the figure; empty where there is none. */
  readonly unit: string;
}

export interface LimitCells {
  readonly cell: (role: LabRole) => string;
  readonly placeOf: (role: LabRole) => Place;
  readonly marks: NumberMarks;
  readonly loneLimit: 'reporting' | 'detection';
  readonly log: FindingLog;
  /** The factor from a limit's unit to the unit of the result; null where there is none. */
  readonly factorFrom: (unit: string, role: LabRole) => Ratio | null;
}

/**
 * Both limits of a row in the unit of its result.
 *
 * A limit that does not say which of the two it is counts as the sidecar says, and as the reporting
 * limit without a word. A limit of zero is none. Limits out of order are reported, and the higher
 * one bounds both.
 * @returns null where a limit cannot be read
 */
export function readLimits(cells: LimitCells): Limits | null {
  const limit = readLimit('limit', cells);
  const statedMdl = readLimit('mdl', cells);
  const statedRl = readLimit('rl', cells);
  if (limit === 'asked' || statedMdl === 'asked' || statedRl === 'asked') return null;
  const lone = kindOfLimit(cells.cell('limitType')) ?? cells.loneLimit;
  const placed = place(lone === 'upper' ? null : limit, statedMdl, statedRl, lone);
  const { mdl, rl } = placed;
  if (mdl === null || rl === null || mdl <= rl) return placed;
  cells.log.raise(
    'result-limit-order',
    `${mdl}|${rl}`,
    `the detection limit ${mdl} is above the reporting limit ${rl}`,
    'ask the lab whether the two columns were exchanged; the higher limit bounds both',
    cells.placeOf('mdl'),
  );
  return { mdl, rl: mdl };
}

function place(
  limit: number | null,
  mdl: number | null,
  rl: number | null,
  lone: 'reporting' | 'detection' | 'upper',
): Limits {
  if (lone === 'detection') return { mdl: mdl ?? limit, rl };
  // A limit that does not say which it is counts as the reporting limit unless that one is given.
  const lower = mdl ?? (rl === null ? null : limit);
  return { mdl: lower, rl: rl ?? (limit === lower ? null : limit) };
}

/** What the column beside a limit calls it. */
function kindOfLimit(text: string): 'reporting' | 'detection' | 'upper' | null {
  if (text === '') return null;
  if (/upper/i.test(text)) return 'upper';
  if (/quantit|report|\b(?:m?rl|pql|loq)\b/i.test(text)) return 'reporting';
  return /detect|\b(?:mdl|lod|idl)\b/i.test(text) ? 'detection' : null;
}

const NO_LIMIT = /^(?:|blank|-+|—|–|na|n\/a|none|nan|null|nd|n\.a\.)$/i;

function readLimit(role: LabRole, cells: LimitCells): number | null | 'asked' {
  const text = cells.cell(role).replace(/^<\s*/, '');
  if (NO_LIMIT.test(text)) return null;
  const figure = limitText(text, cells.marks);
  if (figure === 'unclear') {
    cells.log.raise(
      'decimal-unclear',
      'decimal',
      `"${text}" could be read with a decimal or a grouping comma or point`,
      'name decimal_mark in the sidecar, or ask the lab for plain decimal points',
      cells.placeOf(role),
    );
    return 'asked';
  }
  if (figure === null || figure.value < 0) {
    cells.log.raise(
      'number-unreadable',
      `${role}|${text}`,
      `the limit "${text}" is not a number`,
      'ask the lab for the export with limits as plain numbers',
      cells.placeOf(role),
    );
    return 'asked';
  }
  if (figure.value === 0) return null;
  const unit = figure.unit === '' ? cells.cell('limitUnit') : figure.unit;
  if (unit === '') return figure.value;
  const factor = cells.factorFrom(unit, role);
  return factor === null ? 'asked' : applyRatio(figure.value, factor);
}

function limitText(text: string, marks: NumberMarks): LimitText | 'unclear' | null {
  const plain = readLabDecimal(text, marks);
  if (plain.kind === 'unclear') return 'unclear';
  if (plain.kind === 'number') return { value: plain.value, unit: '' };
  const [, figure = '', unit = ''] =
    /^([\d.,' ]*\d(?:[eE][+-]?\d+)?)\s*([^\d\s].*)$/.exec(text) ?? [];
  const reading = readLabDecimal(figure, marks);
  if (reading.kind === 'unclear') return 'unclear';
  return reading.kind === 'number' && isLabUnit(unit) ? { value: reading.value, unit } : null;
}
