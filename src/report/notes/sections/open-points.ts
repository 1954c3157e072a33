import type { ReductionFact } from '../../../analyse/index.ts';
import { type LevelVerdict, type ReductionRow, resultAt } from '../../../model/index.ts';
import type { Analyte } from '../../../reference/index.ts';
import { isTelling, type ReductionNotes } from '../analyte-facts.ts';
import { analyteWithFeed } from '../analyte-sentences.ts';
import { analyteWords } from '../analyte-words.ts';
import { levelPiece, number, resultSide, sidePiece } from '../figures.ts';
import type { NotesInput } from '../notes-input.ts';
import {
  blocks,
  bullets,
  count,
  counted,
  listed,
  markup,
  NOTHING,
  type Piece,
  paragraph,
  quoted,
  say,
} from '../piece.ts';
import { deviceNames, subjectName } from '../subjects.ts';

/** Rises with their evidence, then what could not be shown and why. */
export function openPointsSection(input: NotesInput, notes: ReductionNotes): Piece {
  if (input.reductions.every(({ row }) => row.outcome === 'untested')) return NOTHING;
  return blocks([
    markup('## Rises and open points'),
    risesPart(input),
    paragraph([feedTooLow(notes), oneOccasion(notes)]),
    limitsAboveLevels(input),
  ]);
}

function risesPart(input: NotesInput): Piece {
  const rises = input.reductions.filter(({ row }) => row.outcome === 'rise');
  if (rises.length === 0) return markup('No product lay above its feed.');
  const names = deviceNames(input.bench);
  const groups = new Map<string, ReductionFact[]>();
  for (const fact of rises) {
    const { device, variant, analyte } = fact.row;
    const key = JSON.stringify([device, variant, analyte]);
    groups.set(key, [...(groups.get(key) ?? []), fact]);
  }
  const items = [...groups.values()].flatMap((facts) => {
    const [first] = facts;
    if (first === undefined) return [];
    const name = subjectName(names.get(first.row.device) ?? first.row.device, first.row.variant);
    const { device, variant, analyte } = first.row;
    const compared = input.reductions.filter(
      ({ row }) =>
        row.device === device &&
        row.variant === variant &&
        row.analyte === analyte &&
        row.outcome !== 'untested',
    );
    return riseItem(input, name, facts, compared.length);
  });
  return blocks([
    paragraph([
      say`A product above its feed was seen in ${counted('rises', rises.length, 'comparison')}.`,
      rises.some(({ row }) => !row.firm)
        ? markup('“Apparent” rests on figures whose uncertainty is assumed or not yet considered.')
        : NOTHING,
      markup('Each calls for a retest before it is held against a device.'),
    ]),
    bullets(items),
  ]);
}

function riseItem(
  input: NotesInput,
  name: string,
  facts: readonly ReductionFact[],
  compared: number,
): Piece {
  const [first] = facts;
  if (first === undefined) return NOTHING;
  const { analyte } = first;
  const change = ({ row }: ReductionFact): Piece => {
    const key = `${row.device}.${row.analyte}.${row.event}`;
    return say`from ${sidePiece(`${key}.feed`, row.feed, row.unit)} to ${sidePiece(`${key}.product`, row.product, row.unit)} (${row.event}${row.kind === 'spiked' ? markup(', spiked') : NOTHING})`;
  };
  const isApparent = facts.every(({ row }) => !row.firm);
  const verb = isApparent ? markup('apparent rise') : markup('rise');
  const occasions =
    facts.length === compared
      ? compared === 1
        ? markup(', on the one occasion compared')
        : compared === 2
          ? markup(', on both occasions compared')
          : say`, on all ${count(`${first.row.device}.occasions`, compared)} occasions compared`
      : say`, on ${count(`${first.row.device}.rises`, facts.length)} of ${count(`${first.row.device}.occasions`, compared)} occasions compared`;
  return say`${name}, ${analyteWords(analyte)}: ${verb} ${listed(facts.map(change))}${occasions}.${blankPart(input, analyte)}${levelPart(facts)}`;
}

/** What the blanks say about the analyte of a rise. */
function blankPart(input: NotesInput, analyte: Analyte): Piece {
  const { results, tables, settings } = input.bench;
  const told: Piece[] = [];
  for (let index = 0; index < results.length; index += 1) {
    const sample = tables.samples[results.sample[index] ?? -1];
    const isOfBlank = sample?.values.position === 'blank' && sample.values.status !== 'void';
    if (!isOfBlank || results.analytes[results.analyte[index] ?? -1]?.key !== analyte.key) continue;
    const result = resultAt(results, index);
    const side = resultSide(result, settings.nondetect_bound);
    if (side === null) continue;
    told.push(
      say`${sample.values.sample}: ${sidePiece(`blank.${sample.values.sample}.${analyte.key}`, side, analyte.unit)}`,
    );
  }
  return told.length === 0 ? markup(' No blank was tested for it.') : say` Blank ${listed(told)}.`;
}

function levelPart(facts: readonly ReductionFact[]): Piece {
  const levels = facts.flatMap(({ row }) =>
    row.reference_levels.filter((level) => level.verdict === 'above' && isTelling(level)),
  );
  const distinct = [
    ...new Map(
      levels.map((level) => [JSON.stringify([level.jurisdiction, level.kind]), level]),
    ).values(),
  ];
  return distinct.length === 0
    ? NOTHING
    : say` The product lies above the ${listed(distinct.map(levelPiece))}.`;
}

/** Analytes of which the feed held too little for any device. */
function feedTooLow({ analytes }: ReductionNotes): Piece {
  const low = analytes.filter(({ devices }) => {
    const known = devices.flatMap(({ summary }) =>
      summary === null || summary.outcome === 'untested' ? [] : summary.outcome,
    );
    return known.length > 0 && known.every((outcome) => outcome === 'untestable');
  });
  const most = analytes.filter(
    (facts) =>
      !low.includes(facts) &&
      facts.devices.some(({ summary }) => summary?.outcome === 'untestable'),
  );
  return paragraph([
    low.length === 0
      ? NOTHING
      : say`The feed held too little to show a reduction of ${listed(low.map(analyteWithFeed), 'or')} by any device.`,
    most.length === 0
      ? NOTHING
      : say`For some devices only, the feed held too little of ${listed(most.map(({ analyte }) => quoted(analyteWords(analyte))))}.`,
  ]);
}

function oneOccasion({ subjects, summaries }: ReductionNotes): Piece {
  const events = (key: string): number =>
    new Set(
      summaries
        .filter(({ device }) => device === key)
        .flatMap(({ facts }) => facts.map(({ row }) => row.event)),
    ).size;
  const once = subjects.filter(({ key }) => events(key) === 1).length;
  if (once === 0) return NOTHING;
  return once === subjects.length
    ? markup('Every device was sampled on one occasion only, so nothing here is repeated.')
    : say`Of the ${count('devices', subjects.length)} devices, ${count('devices-once', once)} ${markup(once === 1 ? 'was' : 'were')} sampled on one occasion only.`;
}

/** Products that a limit of the lab leaves open against a reference level. */
function limitsAboveLevels(input: NotesInput): Piece {
  const open = new Map<
    string,
    { readonly analyte: Analyte; readonly level: LevelVerdict; readonly rows: ReductionRow[] }
  >();
  for (const { row, analyte } of input.reductions) {
    for (const level of row.reference_levels) {
      if (level.verdict !== 'cannot-say' || !isTelling(level)) continue;
      const key = JSON.stringify([row.analyte, level.jurisdiction, level.kind, level.value]);
      const known = open.get(key) ?? { analyte, level, rows: [] };
      open.set(key, known);
      known.rows.push(row);
    }
  }
  if (open.size === 0) return NOTHING;
  return blocks([
    markup(
      'The lab’s limit lies above a reference level, so these products are neither above nor within it:',
    ),
    bullets(
      [...open.values()].map(({ analyte, level, rows }) => {
        const limits = rows.flatMap((row) => row.product.high ?? []);
        const products = counted(`${analyte.key}.open`, rows.length, 'product');
        if (limits.length === 0)
          return say`${analyteWords(analyte)}: ${products}; ${levelPiece(level)}`;
        const limit = number(`${analyte.key}.limit`, Math.max(...limits), analyte.unit);
        return say`${analyteWords(analyte)}: ${products} known to be below ${limit} ${analyte.unit}; ${levelPiece(level)}`;
      }),
    ),
  ]);
}
