import { finding, type Place } from '../../findings/index.ts';
import type { LabResult, LabRole } from '../../model/index.ts';
import {
  type Analyte,
  type AnalyteIndex,
  type Conversion,
  conversionTo,
  divideRatio,
  type Ratio,
  type Unit,
  unitNamed,
} from '../../reference/index.ts';
import { judgeResult } from '../judge-result.ts';
import { letterReader } from '../lab-results/letter-meaning.ts';
import type { JudgementFinding, ResultRules } from '../lab-results/result-cells.ts';
import type { ResultTableBuilder } from '../result-table-builder.ts';
import { inCanonicalUnit } from './canonical-figure.ts';
import type { FindingLog } from './finding-log.ts';
import { readLabDate } from './lab-date.ts';
import { type Limits, readLimits } from './lab-limits.ts';
import { conversionRemedy } from './lab-remedies.ts';
import type { LabRow } from './lab-row.ts';
import type { LayoutPlan } from './layout-plan.ts';
import type { Candidate } from './repeated-results.ts';
import { type ResolvedAnalyte, resolveAnalyte } from './resolve-analyte.ts';
import { isLabUnit, resolveUnit } from './resolve-unit.ts';

/** A figure whose cells were understood, in canonical units; shared by all rows of equal cells. */
export type FigureReading =
  | { readonly kind: 'result'; readonly candidate: Candidate }
  | { readonly kind: 'left-out'; readonly reason: string }
  /** Something has to be asked; the findings say what. */
  | { readonly kind: 'asked'; readonly reason: string };

const MISSING_WORDS = {
  blank: 'blank',
  'not-tested': 'not tested',
  rejected: 'rejected',
  verdict: 'a word, no figure',
  'not-applicable': 'not applicable',
} as const;

const COUNTLESS: ReadonlySet<string> = new Set(['temperature', 'potential']);

/** Reads the figures of one lab file: analyte, unit, limits, sign, letters, basis. */
export class FigureReader {
  readonly #plan: LayoutPlan;
  readonly #analytes: AnalyteIndex;
  readonly #builder: ResultTableBuilder;
  readonly #log: FindingLog;
  readonly #placeOf: (row: LabRow, role: LabRole) => Place;
  readonly #rules: ResultRules;
  readonly #names = new Map<string, ResolvedAnalyte | null>();
  readonly #conversions = new Map<Conversion, number>();
  readonly #converted = new Map<string, Conversion | null>();

  constructor(
    plan: LayoutPlan,
    analytes: AnalyteIndex,
    builder: ResultTableBuilder,
    log: FindingLog,
    placeOf: (row: LabRow, role: LabRole) => Place,
  ) {
    this.#plan = plan;
    this.#analytes = analytes;
    this.#builder = builder;
    this.#log = log;
    this.#placeOf = placeOf;
    this.#rules = {
      marks: plan.marks,
      meaningOf: letterReader(plan.qualifierList, plan.letters),
      notDetected: plan.notDetected,
      coverageFactor: plan.coverageFactor,
      countableMaximum: plan.countableMaximum,
    };
  }

  read(row: LabRow): FigureReading {
    const result = row.cell('result');
    if (this.#plan.sentinels.has(result)) return { kind: 'left-out', reason: 'sentinel' };
    if (isBlank(row)) return { kind: 'left-out', reason: MISSING_WORDS.blank };
    const resolved = this.#analyteOf(row);
    if (resolved === null) return { kind: 'asked', reason: 'analyte' };
    const { analyte } = resolved;
    const unitText = this.#unitText(row);
    const cellUnit = this.#judge(row, analyte, { mdl: null, rl: null }).cellUnit;
    if (saysNothing(this.#judge(row, analyte, { mdl: 1, rl: 1 }).result)) {
      return this.#missing(row, analyte);
    }
    const outcome = resolveUnit(
      { column: unitText, cell: cellUnit, result },
      analyte,
      this.#plan.unitAliases,
      this.#log,
      this.#placeOf(row, 'unit'),
    );
    if (outcome.kind === 'left-out') return outcome;
    if (outcome.kind === 'asked') return { kind: 'asked', reason: 'unit' };
    const stated = this.#basisOf(row, resolved);
    const conversion = this.#conversion(analyte, outcome.unit, stated, row);
    if (conversion === null) return { kind: 'asked', reason: 'basis or unit' };
    const limits = this.#limits(row, analyte, stated, conversion);
    if (limits === null) return { kind: 'asked', reason: 'limit' };
    const judgement = this.#judge(row, analyte, limits);
    this.#report(judgement.findings, row);
    if (judgement.result === null) return { kind: 'asked', reason: 'result' };
    if (judgement.result.kind === 'missing') {
      return { kind: 'left-out', reason: MISSING_WORDS[judgement.result.reason] };
    }
    const index = this.#conversionIndex(conversion, outcome.unit, analyte);
    const canonical = inCanonicalUnit(judgement.result, conversion, index);
    return {
      kind: 'result',
      candidate: {
        analyte: this.#builder.analyteIndex(analyte),
        result: this.#builder.addDistinct(canonical),
        figure: canonical,
        fraction: fractionOf(row, analyte),
        isOwnBasis: !conversion.basisConverted,
        dilution: dilutionOf(row),
        method: row.cell('method'),
        reported: this.#reported(row),
      },
    };
  }

  #missing(row: LabRow, analyte: Analyte): FigureReading {
    const { result, findings } = this.#judge(row, analyte, { mdl: null, rl: null });
    this.#report(findings, row);
    return result?.kind === 'missing'
      ? { kind: 'left-out', reason: MISSING_WORDS[result.reason] }
      : { kind: 'asked', reason: 'result' };
  }

  #judge(row: LabRow, analyte: Analyte, limits: Limits) {
    return judgeResult({
      ...this.#rules,
      result: row.cell('result'),
      sign: row.cell('sign'),
      qualifier: row.cell('qualifier'),
      condition: row.cell('condition'),
      uncertainty: row.cell('uncertainty'),
      ...limits,
      isCount: analyte.group === 'microbiological',
      mayBeNegative: COUNTLESS.has(unitNamed(analyte.unit)?.dimension ?? ''),
      isUnit: isLabUnit,
    });
  }

  #report(findings: readonly JudgementFinding[], row: LabRow): void {
    const at = this.#placeOf(row, 'result');
    for (const item of findings) {
      if (item.subject === undefined)
        this.#log.add(finding(item.code, item.message, item.remedy, at));
      else this.#log.raise(item.code, item.subject, item.message, item.remedy, at);
    }
  }

  #analyteOf(row: LabRow): ResolvedAnalyte | null {
    const cells = {
      name: row.cell('analyte'),
      cas: row.cell('cas'),
      fraction: row.cell('fraction'),
    };
    const key = `${cells.name}\u0001${cells.cas}\u0001${cells.fraction}`;
    const known = this.#names.get(key);
    if (known !== undefined) return known;
    const resolved = resolveAnalyte(cells, this.#analytes, this.#log, (role) =>
      this.#placeOf(row, role),
    );
    this.#names.set(key, resolved);
    return resolved;
  }

  /** A non-detect may carry its unit beside the limit only. */
  #unitText(row: LabRow): string {
    const unit = row.cell('unit');
    const hasFigure = /\d/.test(row.cell('result'));
    return unit === '' && !hasFigure ? row.cell('limitUnit') : unit;
  }

  #basisOf(row: LabRow, { analyte, basis }: ResolvedAnalyte): string | null {
    const column = row.cell('basis');
    const isStated = column !== '' && !/^(?:none|n\/?a|-+)$/i.test(column);
    return basis ?? (isStated ? column : null) ?? this.#plan.basis[analyte.key] ?? null;
  }

  #limits(
    row: LabRow,
    analyte: Analyte,
    stated: string | null,
    conversion: Conversion,
  ): Limits | null {
    return readLimits({
      cell: row.cell,
      placeOf: (role) => this.#placeOf(row, role),
      marks: this.#plan.marks,
      loneLimit: this.#plan.loneLimit,
      log: this.#log,
      factorFrom: (unit, role) => {
        const outcome = resolveUnit(
          { column: unit, cell: null, result: '' },
          analyte,
          this.#plan.unitAliases,
          this.#log,
          this.#placeOf(row, role),
        );
        if (outcome.kind !== 'unit') return null;
        const from = this.#conversion(analyte, outcome.unit, stated, row);
        return from === null ? null : ratioBetween(from, conversion);
      },
    });
  }

  #conversion(analyte: Analyte, unit: Unit, stated: string | null, row: LabRow): Conversion | null {
    // A unit that names its basis goes before a basis the sidecar gives for want of one.
    const basis = unit.basis !== null && stated === this.#plan.basis[analyte.key] ? null : stated;
    const subject = `${analyte.key}|${unit.name}|${unit.basis ?? ''}|${basis ?? ''}`;
    const known = this.#converted.get(subject);
    if (known !== undefined) return known;
    const conversion = conversionTo(analyte, unit, basis);
    const at = this.#placeOf(row, 'unit');
    if (conversion.kind === 'problem') {
      this.#log.raise(
        CONVERSION_CODES[conversion.problem],
        subject,
        `${analyte.name}: ${conversion.message}`,
        conversionRemedy(analyte, conversion, at),
        at,
      );
      this.#converted.set(subject, null);
      return null;
    }
    if (conversion.basisConverted) {
      this.#log.raise(
        'basis-converted',
        subject,
        `${analyte.name} was converted: ${conversion.steps.join('; ')}`,
        'none needed; the conversion is by molar mass',
        at,
      );
    }
    this.#converted.set(subject, conversion);
    return conversion;
  }

  #conversionIndex(conversion: Conversion, unit: Unit, analyte: Analyte): number {
    const known = this.#conversions.get(conversion);
    if (known !== undefined) return known;
    const index = this.#builder.addConversion({
      fromUnit: unit.spelling,
      toUnit: analyte.unit,
      steps: conversion.steps,
    });
    this.#conversions.set(conversion, index);
    return index;
  }

  #reported(row: LabRow): string | null {
    const date = readLabDate(row.cell('reported'), this.#plan.dateOrder);
    return date.kind === 'date' ? date.iso : null;
  }
}

/** The finding that tells why a unit cannot become the canonical one. */
export const CONVERSION_CODES = {
  dimension: 'dimension-wrong',
  'basis-unstated': 'basis-unstated',
  'basis-unknown': 'basis-unknown',
  'no-molar-mass': 'dimension-wrong',
} as const;

/** Nothing stands in any cell that could say what was found. */
export function isBlank(row: LabRow): boolean {
  return (['result', 'sign', 'condition', 'qualifier'] as const).every(
    (role) => row.cell(role) === '',
  );
}

/** A figure that is none whatever its limits and its unit. */
function saysNothing(result: LabResult | null): boolean {
  return result?.kind === 'missing';
}

/** Organic carbon is an analyte by its fraction, so that the fraction tells nothing more. */
function fractionOf(row: LabRow, analyte: Analyte): Candidate['fraction'] {
  if (/dissolved|total|free/i.test(analyte.key)) return null;
  const text = `${row.cell('fraction')} ${row.cell('analyte')}`;
  if (/\bunfiltered|\btotal|recoverable/i.test(text)) return 'total';
  return /\bdissolved|\bfiltered/i.test(text) ? 'dissolved' : null;
}

function dilutionOf(row: LabRow): number | null {
  const factor = Number(row.cell('dilution').replace(',', '.').replace(/x$/i, ''));
  return row.cell('dilution') !== '' && Number.isFinite(factor) ? factor : null;
}

function ratioBetween(from: Conversion, to: Conversion): Ratio | null {
  return divideRatio(from.ratio, to.ratio);
}
