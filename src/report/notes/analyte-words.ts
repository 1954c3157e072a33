import type { Analyte } from '../../reference/index.ts';

/** Groups of analytes as the notes order and head them. */
export interface AnalyteGroup {
  readonly id: string;
  readonly title: string;
  readonly groups: readonly string[];
}

const GROUPS: readonly AnalyteGroup[] = [
  { id: 'metals', title: 'Metals and trace elements', groups: ['metals'] },
  {
    id: 'disinfection',
    title: 'Disinfectants and their by-products',
    groups: ['disinfectants', 'dbp-thm', 'dbp-haa', 'dbp-other'],
  },
  { id: 'pfas', title: 'PFAS', groups: ['pfas'] },
  {
    id: 'organic',
    title: 'Other organic substances',
    groups: ['voc', 'pesticides-svoc', 'pharma-emerging'],
  },
  { id: 'microbes', title: 'Microbes', groups: ['microbiological'] },
  { id: 'radiological', title: 'Radioactivity', groups: ['radiological'] },
  {
    id: 'minerals',
    title: 'Minerals, nutrients and general measures',
    groups: ['minerals', 'nutrients', 'aggregate', 'physical'],
  },
];

const OTHERS: AnalyteGroup = { id: 'others', title: 'Other analytes', groups: [] };

/** The groups that hold any of the analytes, in order; those of the bench's own come last. */
export function analyteGroups<T extends { readonly analyte: Analyte }>(
  items: readonly T[],
): { readonly group: AnalyteGroup; readonly items: readonly T[] }[] {
  return [...GROUPS, OTHERS].flatMap((group) => {
    const own = items.filter((item) => groupOf(item.analyte) === group);
    return own.length === 0 ? [] : [{ group, items: own }];
  });
}

function groupOf(analyte: Analyte): AnalyteGroup {
  return GROUPS.find((group) => group.groups.includes(analyte.group)) ?? OTHERS;
}

/** Words that open the name of a microbe and are no genus. */
const NO_GENUS = /^(total|fecal|faecal|heterotrophic|enterococci|coliphage)/i;

/**
 * The name of an analyte inside a sentence: `free chlorine` of "Chlorine, free", `lead` of "Lead".
 * Names of genera, short forms and names of the bench's own stay as they are.
 */
export function analyteWords(analyte: Analyte): string {
  const { name } = analyte;
  if (groupOf(analyte) === OTHERS) return name;
  if (analyte.group === 'microbiological' && !NO_GENUS.test(name)) return name;
  const turned = /^([^,()]+), ([^,()]+)$/.exec(name);
  const plain = turned === null ? name : `${turned[2]} ${turned[1]}`;
  return plain
    .split(' ')
    .map((word) => (/^[A-Z][a-z]/.test(word) ? word.charAt(0).toLowerCase() + word.slice(1) : word))
    .join(' ');
}
