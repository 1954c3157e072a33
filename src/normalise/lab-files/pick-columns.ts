import { type Finding, finding, type Place } from '../../findings/index.ts';
import type { LabRole } from '../../model/index.ts';
import { readUnit } from '../../reference/index.ts';
import { EXAMPLES, isNumericTwin, ROLE_WORDS, roleWord } from './header-roles.ts';
import type { LayoutPlan, Shape } from './layout-plan.ts';

export interface PickedColumns {
  readonly columns: Partial<Record<LabRole, number>>;
  readonly constants: Partial<Record<LabRole, string>>;
  /** Roles two columns could hold. */
  readonly ambiguous: readonly { readonly role: LabRole; readonly indices: readonly number[] }[];
}

/** Roles without which a figure is still read right; with two candidates none is used. */
const OPTIONAL: ReadonlySet<LabRole> = new Set([
  'matrix',
  'method',
  'dilution',
  'collected',
  'collectedTime',
  'timeZone',
  'received',
  'analysed',
  'reported',
]);

/** The column of each role by the words of the header. */
export function pickColumns(header: readonly string[]): PickedColumns {
  const strong = new Map<LabRole, number[]>();
  const weak = new Map<LabRole, number[]>();
  for (const [index, text] of header.entries()) {
    const word = isNumericTwin(text) ? null : roleWord(text);
    if (word === null) continue;
    const into = word.isWeak ? weak : strong;
    into.set(word.role, [...(into.get(word.role) ?? []), index]);
  }
  const columns: Partial<Record<LabRole, number>> = {};
  const ambiguous: { role: LabRole; indices: readonly number[] }[] = [];
  for (const role of new Set([...strong.keys(), ...weak.keys()])) {
    const indices = strong.get(role) ?? weak.get(role) ?? [];
    const [only] = indices;
    if (indices.length === 1 && only !== undefined) columns[role] = only;
    else if (!OPTIONAL.has(role)) ambiguous.push({ role, indices });
  }
  // The lab's own number identifies a sample; two names of it then matter no more.
  const hasNumber = columns.labSample !== undefined;
  return {
    columns,
    constants: headerUnit(header, columns),
    ambiguous: ambiguous.filter(({ role }) => !(role === 'clientSample' && hasNumber)),
  };
}

/** `Result (ug/L)`: the unit of every row stands in the header. */
function headerUnit(
  header: readonly string[],
  columns: Readonly<Partial<Record<LabRole, number>>>,
): Partial<Record<LabRole, string>> {
  if (columns.unit !== undefined || columns.result === undefined) return {};
  const unit = /[([]([^)\]]+)[)\]]\s*$/.exec(header[columns.result] ?? '')?.[1];
  return unit !== undefined && readUnit(unit, {}).kind === 'unit' ? { unit } : {};
}

type NeededRoles = readonly (readonly [string, readonly LabRole[]])[];

const NEEDED: Readonly<Record<Shape, NeededRoles>> = {
  long: [
    ['sample number', ['labSample', 'clientSample']],
    ['analyte', ['analyte', 'cas']],
    ['result', ['result']],
    ['unit', ['unit']],
  ],
  'analytes-across': [['sample number', ['labSample', 'clientSample']]],
  'samples-across': [
    ['analyte', ['analyte', 'cas']],
    ['unit', ['unit']],
  ],
  'sample-list': [['sample number', ['labSample']]],
};

/**
 * A finding for each role that has no column and no constant.
 *
 * @param asked roles that two columns could hold, which another finding asks about
 */
export function missingRoles(
  plan: Pick<LayoutPlan, 'shape' | 'columns' | 'constants' | 'sampleFrom'>,
  at: Place,
  asked: ReadonlySet<LabRole> = new Set(),
): Finding[] {
  return NEEDED[plan.shape]
    .filter(([, roles]) => !roles.some((role) => asked.has(role)))
    .filter(([, roles]) => !(roles.includes('labSample') && plan.sampleFrom.length > 0))
    .filter(([, roles]) =>
      roles.every((role) => plan.columns[role] === undefined && plan.constants[role] === undefined),
    )
    .map(([name, roles]) =>
      finding(
        'layout-role-missing',
        `no column holds the ${name}`,
        `name the column in the sidecar, which \`check --write-layouts\` starts, or a column of the ` +
          `export ${roles.map((role) => `"${EXAMPLES[role] ?? role}"`).join(' or ')}`,
        at,
      ),
    );
}

export function ambiguousRoles(
  picked: PickedColumns,
  header: readonly string[],
  placeOf: (column: number) => Place,
): Finding[] {
  return picked.ambiguous.map(({ role, indices }) =>
    finding(
      'layout-role-ambiguous',
      `${indices.length} columns could hold the ${ROLE_WORDS[role]}: ${indices
        .map((index) => `"${header[index] ?? ''}"`)
        .join(', ')}`,
      `name the one that counts in the sidecar, which \`check --write-layouts\` starts`,
      placeOf(indices[1] ?? 0),
    ),
  );
}
