import { type Finding, finding } from '../../findings/index.ts';
import type { Analyte } from '../../reference/index.ts';
import { isUsable, type SampleResults } from './sample-results.ts';
import { shortNumber } from './short-number.ts';

/** A whole and what is part of it, by analyte key. Members of sums stand in the analyte table. */
const PARTS: readonly (readonly [string, readonly string[]])[] = [
  ['chlorine-total', ['chlorine-free', 'chloramines', 'monochloramine']],
  ['chloramines', ['monochloramine']],
  ['arsenic', ['arsenic-iii', 'arsenic-v']],
  ['chromium', ['chromium-3', 'chromium-6']],
  ['cyanide-total', ['cyanide-free']],
  ['total-nitrogen', ['nitrate-nitrite', 'nitrate', 'nitrite', 'total-kjeldahl-nitrogen']],
  ['total-kjeldahl-nitrogen', ['ammonia']],
  ['total-phosphorus', ['orthophosphate']],
  ['total-organic-carbon', ['dissolved-organic-carbon']],
  ['total-solids', ['total-dissolved-solids', 'total-suspended-solids']],
  ['color-apparent', ['color-true']],
  ['total-coliform', ['fecal-coliform', 'e-coli']],
  ['fecal-coliform', ['e-coli']],
];

/**
 * A part above its whole, and members that together exceed their sum.
 *
 * Both are measurements: the part may exceed the whole by the criterion for duplicates and one
 * reporting limit before it is told.
 * Source: consistency of wholes and parts, ASTM D596 section 9 (seen in an extract).
 */
export function totalFindings(view: SampleResults): Finding[] {
  const wholes = wholesOf(view);
  if (wholes.length === 0) return [];
  return view.samples.flatMap((row, sample) =>
    isUsable(row)
      ? wholes.flatMap(({ whole, parts, isSum }) => checkWhole(view, sample, whole, parts, isSum))
      : [],
  );
}

interface Whole {
  readonly whole: number;
  readonly parts: readonly number[];
  /** The parts add up to no more than the whole; otherwise they may overlap. */
  readonly isSum: boolean;
}

function wholesOf(view: SampleResults): Whole[] {
  const members = view.table.analytes
    .filter((analyte) => analyte.members.length > 0 && analyte.key !== 'total-hardness')
    .map(({ key, members: parts }) => ({ key, parts, isSum: true }));
  const others = PARTS.flatMap(([key, parts]) => {
    const known = members.find((sum) => sum.key === key)?.parts ?? [];
    return { key, parts: parts.filter((part) => !known.includes(part)), isSum: false };
  });
  return [...members, ...others].flatMap(({ key, parts, isSum }) => {
    const known = parts.filter((part) => isComparable(view, key, part));
    const whole = view.analyteNamed(key);
    if (whole === -1 || known.length === 0) return [];
    return { whole, parts: known.map((part) => view.analyteNamed(part)), isSum };
  });
}

/** Both occur in the bench, in one unit and, where they have one, on one basis. */
function isComparable(view: SampleResults, whole: string, part: string): boolean {
  const [a, b] = [whole, part].map(
    (key): Analyte | undefined => view.table.analytes[view.analyteNamed(key)],
  );
  if (a === undefined || b === undefined || a.unit !== b.unit) return false;
  return a.basis === b.basis || a.basis === null || b.basis === null;
}

function checkWhole(
  view: SampleResults,
  sample: number,
  whole: number,
  parts: readonly number[],
  isSum: boolean,
): Finding[] {
  const total = view.find(sample, whole);
  const bounds = total === -1 ? null : view.interval(total);
  if (bounds === null) return [];
  const { rl } = view.result(total);
  const name = view.analyte(total).name;
  const { unit } = view.analyte(total);
  const slack = 1 + view.bench.settings.quality.duplicate_rpd / 100;
  const most = (limits: number): number => bounds.high * slack + Math.max(limits, rl ?? 0);
  const found = parts.map((part) => view.find(sample, part)).filter((index) => index !== -1);
  const findings = found.flatMap((index) => {
    const low = view.interval(index)?.low ?? 0;
    if (low <= most(view.result(index).rl ?? 0)) return [];
    return finding(
      'part-above-total',
      `${view.analyte(index).name}, at least ${shortNumber(low)} ${unit}, is a part of ${name}, ` +
        `which is at most ${shortNumber(bounds.high)}`,
      'ask the lab which of the two holds; unit, basis or bottle of one is wrong',
      view.place(index),
    );
  });
  const sum = found.reduce((all, index) => all + (view.interval(index)?.low ?? 0), 0);
  if (!isSum || findings.length > 0 || sum <= most(0)) return findings;
  return [
    finding(
      'total-below-parts',
      `${name} is at most ${shortNumber(bounds.high)} ${unit} and its members together are at ` +
        `least ${shortNumber(sum)}`,
      'ask the lab how the sum was made',
      view.place(total),
    ),
  ];
}
