import {
  type Analyte,
  type AnalyteIndex,
  convert,
  levelsOf,
  type Unit,
  unitNamed,
} from '../../reference/index.ts';

/** One member of a sum: its concentration times `weight` is its part of the sum. */
export interface SumMember {
  readonly analyte: Analyte;
  readonly weight: number;
}

/** A sum over a fixed list of members. */
export interface SumList {
  readonly key: string;
  readonly name: string;
  /** Unit of the sum; `1` for a sum of ratios. */
  readonly unit: string;
  /** `as CaCO3`, `as N`; null where only one basis exists. */
  readonly basis: string | null;
  /** `sum` adds amounts, `ratio` adds each member over its own reference level. */
  readonly rule: 'sum' | 'ratio';
  readonly members: readonly SumMember[];
  /** The highest value a sum of ratios may take; null for a sum of amounts. */
  readonly limit: number | null;
  /** What fixes members and weights. */
  readonly source: string;
}

interface RatioRule {
  readonly key: string;
  readonly name: string;
  readonly members: readonly string[];
  readonly jurisdiction: string;
  readonly kind: string;
  readonly source: string;
}

const RATIOS: readonly RatioRule[] = [
  {
    key: 'tthm-ratio',
    name: 'Trihalomethanes, WHO sum of ratios',
    members: ['chloroform', 'bromodichloromethane', 'dibromochloromethane', 'bromoform'],
    jurisdiction: 'WHO',
    kind: 'guideline value',
    source: 'WHO Guidelines for drinking-water quality: each over its guideline value, at most 1',
  },
  {
    key: 'nitrate-nitrite-ratio',
    name: 'Nitrate and nitrite, WHO sum of ratios',
    members: ['nitrate', 'nitrite'],
    jurisdiction: 'WHO',
    kind: 'guideline value',
    source: 'WHO Guidelines for drinking-water quality: each over its guideline value, at most 1',
  },
  {
    key: 'pfas-hazard-index',
    name: 'PFAS hazard index',
    members: ['hfpo-da', 'pfbs', 'pfna', 'pfhxs'],
    jurisdiction: 'US-EPA',
    kind: 'hazard-index HBWC',
    source: '40 CFR 141.61(c)(2): each over its health-based water concentration, at most 1',
  },
];

/** Wholes whose parts are no list to add up: what is left of the whole is no error of the parts. */
const NOT_ADDED = new Set(['chlorine-total', 'pfas-hazard-index']);

/**
 * The sums that can be formed: every sum of the analyte table with its members, and the sums of
 * ratios to reference levels.
 *
 * Hardness adds calcium and magnesium each times the molar mass of CaCO3 over its own; nitrate and
 * nitrite are added as N.
 * @returns only sums all of whose members can be brought to one unit
 * Source: member lists of the analyte table; the rules named in each list.
 */
export function sumLists(index: AnalyteIndex): SumList[] {
  const sums = index.analytes.flatMap((sum): SumList[] => {
    if (sum.members.length < 2 || NOT_ADDED.has(sum.key)) return [];
    const members = membersOf(sum.members, index, (member) => amountWeight(member, sum));
    return members === null
      ? []
      : [
          {
            key: sum.key,
            name: sum.name,
            unit: sum.unit,
            basis: sum.basis,
            rule: 'sum',
            members,
            limit: null,
            source: sum.note ?? 'members of the analyte table',
          },
        ];
  });
  return [...sums, ...RATIOS.flatMap((rule) => ratioList(rule, index))];
}

function ratioList(rule: RatioRule, index: AnalyteIndex): SumList[] {
  const members = membersOf(rule.members, index, (member) => {
    const level = levelsOf(member, [rule.jurisdiction]).find(({ kind }) => kind === rule.kind);
    const value = level?.canonicalValue ?? null;
    return value === null || value === 0 ? null : 1 / value;
  });
  if (members === null) return [];
  const { key, name, source } = rule;
  return [{ key, name, unit: '1', basis: null, rule: 'ratio', members, limit: 1, source }];
}

function membersOf(
  keys: readonly string[],
  index: AnalyteIndex,
  weightOf: (member: Analyte) => number | null,
): SumMember[] | null {
  const members: SumMember[] = [];
  for (const key of keys) {
    const analyte = index.byKey(key);
    const weight = analyte === undefined ? null : weightOf(analyte);
    if (analyte === undefined || weight === null) return null;
    members.push({ analyte, weight });
  }
  return members;
}

/** What one canonical unit of a member adds to a sum of amounts; null where it cannot be added. */
function amountWeight(member: Analyte, sum: Analyte): number | null {
  const from = unitNamed(member.unit);
  const to = unitNamed(sum.unit);
  if (from === undefined || to === undefined) return null;
  const factor = unitFactor(from, to);
  if (factor === null || member.basis === sum.basis || sum.basis === null) return factor;
  const mass = (basis: string | null): number | null =>
    member.bases.find((known) => known.basis === basis)?.gPerMol ?? null;
  const own = mass(member.basis);
  const wanted = mass(sum.basis);
  return own === null || wanted === null ? null : (factor * wanted) / own;
}

function unitFactor(from: Unit, to: Unit): number | null {
  const one = convert(1, from, to);
  return one.kind === 'value' ? one.value : null;
}
