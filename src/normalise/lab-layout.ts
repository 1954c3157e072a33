import { type Finding, finding, type Place, place } from '../findings/index.ts';
import { type LabRole, roleOf } from './lab-roles.ts';

/** How a lab file is read: its kind and the field index of every role it has. */
export interface LabLayout {
  readonly kind: 'long, result text' | 'long, sign column';
  readonly columns: Readonly<Partial<Record<LabRole, number>>>;
}

export interface LayoutReading {
  /** Null when the layout is not certain; the findings say why. */
  readonly layout: LabLayout | null;
  readonly findings: readonly Finding[];
}

/**
 * Proposes the layout of a long lab export from its header. It is accepted only where every role
 * has exactly one candidate; otherwise the findings name each doubt.
 */
export function detectLayout(
  path: string,
  header: readonly string[],
  headerLine: number,
): LayoutReading {
  const candidates = new Map<LabRole, number[]>();
  for (const [index, text] of header.entries()) {
    const role = roleOf(text);
    if (role !== null) candidates.set(role, [...(candidates.get(role) ?? []), index]);
  }
  const headerPlace = (index: number): Place =>
    place({ file: path, line: headerLine, column: index + 1, field: header[index] ?? null });
  const findings: Finding[] = [];
  for (const [role, indices] of candidates) {
    if (indices.length > 1) {
      findings.push(
        finding(
          'layout-role-ambiguous',
          `${indices.length} columns could hold the ${ROLE_WORDS[role]}: ${indices
            .map((index) => `"${header[index] ?? ''}"`)
            .join(', ')}`,
          'ask the lab which one counts, and leave the others out of the file you keep in lab/',
          headerPlace(indices[1] ?? 0),
        ),
      );
    }
  }
  for (const [name, roles] of NEEDED) {
    if (!roles.some((role) => candidates.has(role))) {
      findings.push(
        finding(
          'layout-role-missing',
          `no column holds the ${name}`,
          `name a column of the export ${roles.map((role) => `"${EXAMPLES[role] ?? role}"`).join(' or ')}`,
          place({ file: path, line: headerLine }),
        ),
      );
    }
  }
  if (findings.length > 0) return { layout: null, findings };
  const columns: Partial<Record<LabRole, number>> = {};
  for (const [role, [index]] of candidates) if (index !== undefined) columns[role] = index;
  const kind = columns.sign === undefined ? 'long, result text' : 'long, sign column';
  return { layout: { kind, columns }, findings: [] };
}

const NEEDED: readonly (readonly [string, readonly LabRole[]])[] = [
  ['sample number', ['labSample', 'clientSample']],
  ['analyte', ['analyte', 'cas']],
  ['result', ['result']],
  ['unit', ['unit']],
];

const EXAMPLES: Readonly<Partial<Record<LabRole, string>>> = {
  labSample: 'Sample ID',
  clientSample: 'Client ID',
  analyte: 'Analyte',
  cas: 'CAS Number',
  result: 'Result',
  unit: 'Units',
};

const ROLE_WORDS: Readonly<Record<LabRole, string>> = {
  labSample: 'sample number',
  clientSample: 'name of the sample',
  analyte: 'analyte',
  cas: 'CAS number',
  result: 'result',
  sign: 'sign',
  unit: 'unit',
  mdl: 'detection limit',
  rl: 'reporting limit',
  limit: 'limit',
  qualifier: 'qualifier',
  basis: 'basis',
};
