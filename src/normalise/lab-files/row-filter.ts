import type { LabRow } from './lab-row.ts';
import type { LayoutPlan } from './layout-plan.ts';

/** Why a row is no result of a client sample. */
export interface LeftOut {
  readonly reason: string;
  /** Field blanks, trip blanks and field duplicates count where samples.csv lists them. */
  readonly unlessListed: boolean;
}

type Rule = readonly [pattern: RegExp, reason: string];

/** Codes as whole cells: QCCODE of electronic deliverables and its kin. */
const CODES: ReadonlyMap<string, string> = new Map(
  (
    [
      ['laboratory blank', 'LB MB LRB BLK CCB ICB PB IB RB'],
      ['laboratory spike', 'BS BD BSD LCS LCSD MS MSD SD LFB LFM QCS LFSM LFSMD OPR'],
      ['laboratory replicate', 'LR LD DUP REP'],
      ['calibration', 'CCV ICV CAL ICAL CCC'],
      ['surrogate or internal standard', 'SU IN SUR SURR ISTD'],
      ['not a client sample', 'NC'],
    ] as const
  ).flatMap(([reason, codes]) => codes.split(' ').map((code) => [code, reason] as const)),
);

const FIELD_CODES: ReadonlyMap<string, string> = new Map(
  (
    [
      ['field blank', 'TB FB EB RSB QCTB QCFB QCEB'],
      ['field duplicate', 'FD FDUP'],
    ] as const
  ).flatMap(([reason, codes]) => codes.split(' ').map((code) => [code, reason] as const)),
);

const FIELD_QC: readonly Rule[] = [
  [
    /\b(?:field|trip|travel|transport|equipment|rinsate|container|bottle|sampler)\b.*\bblank/i,
    'field blank',
  ],
  [/\bfield (?:replicate|duplicate|split)/i, 'field duplicate'],
];

const LAB_QC: readonly Rule[] = [
  [
    /\b(?:lab(?:oratory)?|method|prep(?:aration)?|reagent|instrument|calibration|system|digestion|storage)\b.*\bblank|blank control|^blank$/i,
    'laboratory blank',
  ],
  [/spike|fortified|laboratory control|\bLCSD?\b/i, 'laboratory spike'],
  [/surrogate|internal standard/i, 'surrogate or internal standard'],
  [/recovery/i, 'recovery'],
  [/\b(?:lab(?:oratory)?) (?:duplicate|replicate)/i, 'laboratory replicate'],
  [/calibrat|check standard|reference (?:material|standard)/i, 'calibration'],
  [/(?:negative|positive|quality) control(?! sample-)/i, 'laboratory control'],
];

/** Names of samples that only quality-control samples bear. */
const QC_NAMES: readonly Rule[] = [
  [/^(?:QC)?(?:TB|FB|EB)(?:[-_/ #]|\d|$)|^LTB[-_/ ]/i, 'field blank'],
  [/^(?:MB|LB|BLK|CCB|ICB)(?:[-_/ #]|\d|$)/, 'laboratory blank'],
  [/^(?:LCSD?|MSD?|BSD?|LFB|OPR)(?:[-_/ #]|\d|$)/, 'laboratory spike'],
  [/^(?:CCV|ICV)(?:[-_/ #]|\d|$)/, 'calibration'],
];

const SOLID = /^(?:SO|SH|SL|SED?|S|soil|solid|sludge|sediment|tissue|air|wipe|waste|biosolid)s?$/i;
const MARKED_STANDARD =
  /surrogate|internal standard|(?:^|[^0-9A-Za-z])\[?13C\d*|^13C|^(?:M\d|d\d+-)|-d\d+\b|percent recovery/i;

/** Why a row is left out by rule; null for a row that is to be read. */
export function leftOutBy(row: LabRow, plan: LayoutPlan): LeftOut | null {
  for (const rule of plan.filters) {
    const cell = (row.cells[rule.column] ?? '').trim();
    const isOut = (rule.keep !== null && !rule.keep.has(cell)) || rule.leaveOut?.has(cell) === true;
    if (isOut) return { reason: rule.reason, unlessListed: false };
  }
  const kind = byKind(row.cell('sampleKind'));
  if (kind !== null) return kind;
  const sign = CODES.get(row.cell('sign').toUpperCase());
  if (sign === 'surrogate or internal standard') return { reason: sign, unlessListed: false };
  if (SOLID.test(row.cell('matrix'))) return { reason: 'not water', unlessListed: false };
  if (/^suspended/i.test(row.cell('fraction'))) {
    return { reason: 'suspended fraction', unlessListed: false };
  }
  const analyte = row.cell('analyte');
  if (MARKED_STANDARD.test(analyte)) {
    return { reason: 'surrogate or internal standard', unlessListed: false };
  }
  return null;
}

function byKind(kind: string): LeftOut | null {
  if (kind === '') return null;
  const code = kind.toUpperCase();
  const fieldCode = FIELD_CODES.get(code);
  if (fieldCode !== undefined) return { reason: fieldCode, unlessListed: true };
  const labCode = CODES.get(code);
  if (labCode !== undefined) return { reason: labCode, unlessListed: false };
  const field = FIELD_QC.find(([pattern]) => pattern.test(kind));
  if (field !== undefined) return { reason: field[1], unlessListed: true };
  const lab = LAB_QC.find(([pattern]) => pattern.test(kind));
  return lab === undefined ? null : { reason: lab[1], unlessListed: false };
}

/** Why a sample nobody listed is one of quality control, by its name; null where it may be a client's. */
export function qualityControlName(names: readonly string[]): string | null {
  for (const name of names) {
    if (name === '') continue;
    const rules = [...QC_NAMES, ...FIELD_QC, ...LAB_QC];
    const rule = rules.find(([pattern]) => pattern.test(name));
    if (rule !== undefined) return `${rule[1]}, by its name`;
  }
  return null;
}
