import { BenchError, type Finding, finding } from '../findings/index.ts';
import {
  type BenchRow,
  cellPlace,
  FILES,
  type LabResult,
  type MostProbable,
} from '../model/index.ts';
import { type Analyte, type AnalyteIndex, unitNamed } from '../reference/index.ts';
import { type MostProbableNumber, mostProbableNumber } from '../statistics/index.ts';
import type { BenchTables } from './cross-references.ts';
import { namedAnalyte } from './named-analyte.ts';
import type { ResultTableBuilder } from './result-table-builder.ts';

/** The tubes of one sample and organism. */
interface TubeGroup {
  readonly sample: number;
  readonly analyte: Analyte;
  readonly rows: readonly BenchRow<'tubes'>[];
}

/**
 * Adds the results of tubes.csv: the most probable number of each sample and organism with its limits.
 *
 * Where a lab file holds a result of the same sample and organism, that row takes the result of the
 * tubes, so that it stays in its lab file; a figure outside the limits is told.
 * @param confidence of the limits, two-sided
 * @returns findings; rows with an error are left out
 */
export function addTubeResults(
  tables: BenchTables,
  analytes: AnalyteIndex,
  confidence: number,
  builder: ResultTableBuilder,
): Finding[] {
  const { groups, findings } = groupsOf(tables, analytes);
  const [first] = tables.tubes;
  if (first === undefined) return findings;
  let results = 0;
  for (const group of groups) {
    const number = numberOf(group, confidence);
    if ('code' in number) {
      findings.push(number);
      continue;
    }
    const result = resultOf(group, number, builder);
    const analyte = builder.analyteIndex(group.analyte);
    const [at] = builder.find(group.sample, analyte);
    if (at === undefined) {
      const row = group.rows[0] ?? first;
      const field = row.source.fieldIndex.get('positive') ?? 0;
      const { line } = row;
      builder.add({
        line,
        field,
        sample: group.sample,
        analyte,
        result: builder.addDistinct(result),
      });
      results += 1;
    } else {
      const printed = builder.resultAt(at);
      const text = printed?.text ?? result.text;
      findings.push(...disagreement(group, result, printed));
      builder.setResult(at, builder.addDistinct({ ...result, text }));
    }
  }
  builder.addFile({
    path: FILES.tubes.path,
    stem: 'tubes',
    header: first.source.header,
    layout: 'tubes of most probable numbers',
    rowsRead: tables.tubes.length,
    results,
    leftOut: [
      { reason: 'joined into one number of a sample', count: tables.tubes.length - results },
    ].filter(({ count }) => count > 0),
    proposal: null,
    collected: new Map(),
  });
  return findings;
}

function groupsOf(
  tables: BenchTables,
  analytes: AnalyteIndex,
): { readonly groups: readonly TubeGroup[]; readonly findings: Finding[] } {
  const samples = new Map(tables.samples.map((row, index) => [row.values.sample, index]));
  const findings: Finding[] = [];
  const groups = new Map<string, TubeGroup & { readonly rows: BenchRow<'tubes'>[] }>();
  for (const row of tables.tubes) {
    const named = namedAnalyte(row, row.values.analyte, analytes);
    const problem = 'code' in named ? named : rowProblem(row, named.analyte);
    const sample = samples.get(row.values.sample);
    if (problem !== null) findings.push(problem);
    // An unknown sample is told with the other references.
    if (problem !== null || sample === undefined || 'code' in named) continue;
    const key = `${sample}\t${named.analyte.key}`;
    const group = groups.get(key) ?? { sample, analyte: named.analyte, rows: [] };
    groups.set(key, group);
    group.rows.push(row);
  }
  return { groups: [...groups.values()], findings };
}

function rowProblem(row: BenchRow<'tubes'>, analyte: Analyte): Finding | null {
  const { tubes, positive } = row.values;
  if (positive > tubes) {
    return finding(
      'tubes-impossible',
      `${positive} of ${tubes} tubes are positive`,
      'count the positive tubes again',
      cellPlace(row, 'positive'),
    );
  }
  if (unitNamed(analyte.unit)?.dimension === 'most-probable-number') return null;
  return finding(
    'dimension-wrong',
    `${analyte.name} is kept in ${analyte.unit}, and tubes give a most probable number`,
    'name an organism that is kept as a most probable number, or add one to analytes.csv with the ' +
      'unit MPN/100mL',
    cellPlace(row, 'analyte'),
  );
}

function numberOf({ rows }: TubeGroup, confidence: number): MostProbableNumber | Finding {
  const sets = rows.map(({ values: { volume, tubes, positive } }) => ({
    volume: volume.value,
    tubes,
    positive,
  }));
  try {
    return mostProbableNumber(sets, confidence);
  } catch (error) {
    const [first] = rows;
    if (!(error instanceof BenchError) || first === undefined) throw error;
    const { message, remedy } = error.finding;
    return finding('tubes-impossible', message, remedy, cellPlace(first, 'tubes'));
  }
}

/** From organisms in a litre to the canonical unit. */
function resultOf(
  { analyte, rows }: TubeGroup,
  { estimate, low, high, uLog }: MostProbableNumber,
  builder: ResultTableBuilder,
): MostProbable {
  const perLitre = unitNamed('MPN/L')?.toBase ?? { num: 1, den: 1 };
  const own = unitNamed(analyte.unit)?.toBase ?? { num: 1, den: 1 };
  const convert = (value: number): number =>
    (value * perLitre.num * own.den) / (perLitre.den * own.num);
  const words = [...rows]
    .sort((a, b) => b.values.volume.value - a.values.volume.value)
    .map(({ values: { positive, tubes, volume } }) => {
      const mL = Number((volume.value * 1000).toPrecision(6));
      return `${positive} of ${tubes} at ${mL} mL`;
    });
  return {
    kind: 'mostProbable',
    value: estimate === null ? null : convert(estimate),
    low: convert(low),
    high: convert(high),
    uLog,
    tubes: words.join(', '),
    mdl: null,
    rl: null,
    stated: null,
    text: words.join(', '),
    qualifiers: [],
    conversion: builder.addConversion({ fromUnit: 'MPN/L', toUnit: analyte.unit, steps: [] }),
  };
}

function disagreement(
  { rows, analyte }: TubeGroup,
  { low, high, value, tubes }: MostProbable,
  printed: LabResult | undefined,
): Finding[] {
  const [first] = rows;
  if (printed?.kind !== 'quantified' || first === undefined) return [];
  if (printed.value >= low && printed.value <= high) return [];
  const figure = (number: number): string => String(Number(number.toPrecision(3)));
  return [
    finding(
      'tubes-disagree',
      `${analyte.name}: the lab prints ${figure(printed.value)} ${analyte.unit}, and ${tubes} ` +
        `give ${value === null ? `${figure(low)} to ${figure(high)}` : figure(value)}`,
      'check volumes and dilution; the tubes are used',
      cellPlace(first, 'positive'),
    ),
  ];
}
