import type { CommandEntry } from './command-entry.ts';

const BENCH = { name: 'bench', about: 'folder of the bench, with its bench.json' };

/** The commands, in the order in which a reviewer needs them. What is not here does not exist. */
export const COMMAND_TABLE: readonly CommandEntry[] = [
  {
    name: 'new',
    args: [{ name: 'folder', about: 'folder to make; it must not hold anything yet' }],
    summary: 'a blank bench with every file, ready to fill in',
    options: [],
    examples: ['new my-bench', 'new samples/second-bench --quiet'],
    load: () => import('../commands/new.ts'),
  },
  {
    name: 'check',
    args: [BENCH],
    summary: 'read everything and print all findings',
    options: ['against', 'writeLayouts', 'format', 'out'],
    examples: ['check samples/first-bench', 'check samples/fourteen-devices --format csv'],
    load: () => import('../commands/check.ts'),
  },
  {
    name: 'reductions',
    args: [BENCH],
    summary: 'reductions of every analyte, device by device',
    options: ['device', 'variant', 'analyte', 'sums', 'filterLife', 'log10', 'format', 'out'],
    examples: [
      'reductions samples/first-bench',
      'reductions samples/fourteen-devices --device tankless-a --analyte lead --format json',
    ],
    load: () => import('../commands/reductions.ts'),
  },
  {
    name: 'water-use',
    args: [BENCH],
    summary: 'drain ratios, usage scenarios, break-even pour sizes and sweeps',
    options: [
      'device',
      'variant',
      'scenario',
      'curve',
      'breakEven',
      'regions',
      'pour',
      'poursPerDay',
      'inputs',
      'sweep',
      'draws',
      'seed',
      'format',
      'out',
    ],
    examples: [
      'water-use samples/fourteen-devices --scenario family',
      'water-use samples/first-bench --curve --pour "250 ml" --pour "2 L"',
    ],
    load: () => import('../commands/water-use.ts'),
  },
  {
    name: 'pours',
    args: [BENCH],
    summary: 'flow of clean water, filling times, and the first water after a pause',
    options: ['device', 'variant', 'scenario', 'idleRise', 'above', 'seed', 'format', 'out'],
    examples: [
      'pours samples/first-bench',
      'pours samples/fourteen-devices --idle-rise --above "50 ppm"',
    ],
    load: () => import('../commands/pours.ts'),
  },
  {
    name: 'minerals',
    args: [BENCH],
    summary: 'what the water keeps of its minerals, gains from a mineral stage and may corrode',
    options: ['device', 'variant', 'analyte', 'format', 'out'],
    examples: [
      'minerals samples/fourteen-devices',
      'minerals samples/fourteen-devices --device tankless-c --format json',
    ],
    load: () => import('../commands/minerals.ts'),
  },
  {
    name: 'costs',
    args: [BENCH],
    summary: 'cost of ownership: purchase, parts, water, sewer and energy',
    options: ['device', 'variant', 'scenario', 'seed', 'format', 'out'],
    examples: [
      'costs samples/fourteen-devices --scenario family',
      'costs samples/fourteen-devices --device tankless-a --format json',
    ],
    load: () => import('../commands/costs.ts'),
  },
  {
    name: 'panel',
    args: [BENCH],
    summary: 'sensory tests: what the panel could tell, and how large it would have to be',
    options: ['device', 'format', 'out'],
    examples: ['panel samples/fourteen-devices', 'panel samples/fourteen-devices --format csv'],
    load: () => import('../commands/panel.ts'),
  },
  {
    name: 'sheets',
    args: [BENCH],
    summary: 'printable sheets for the sampling day: codes, order, bottles, deadlines, custody',
    options: ['device', 'variant', 'seed', 'format', 'out'],
    examples: [
      'sheets samples/fourteen-devices --device tankless-a',
      'sheets samples/first-bench --seed 7 --format md',
    ],
    load: () => import('../commands/sheets.ts'),
  },
  {
    name: 'claims',
    args: [BENCH],
    summary: 'claims and certificates against measurements',
    options: ['device', 'variant', 'analyte', 'format', 'out'],
    examples: [
      'claims samples/fourteen-devices',
      'claims samples/fourteen-devices --device pitcher-b --format json',
    ],
    load: () => import('../commands/claims.ts'),
  },
  {
    name: 'compare',
    args: [BENCH],
    summary: 'all measures of all devices side by side',
    options: ['device', 'variant', 'analyte', 'scenario', 'seed', 'format', 'out'],
    examples: [
      'compare samples/first-bench',
      'compare samples/fourteen-devices --device tankless-a --device tankless-b',
    ],
    load: () => import('../commands/compare.ts'),
  },
  {
    name: 'notes',
    args: [BENCH],
    summary: 'everything: Markdown notes, tables, charts and data in one folder',
    options: ['device', 'variant', 'analyte', 'scenario', 'seed', 'folder', 'force'],
    examples: [
      'notes samples/first-bench -o first-notes',
      'notes samples/fourteen-devices -o review-notes --scenario family',
    ],
    load: () => import('../commands/notes.ts'),
  },
  {
    name: 'trace',
    args: [
      BENCH,
      { name: 'device', about: 'device whose figure is traced' },
      { name: 'measure', about: 'the figure, such as reduction.lead; compare lists them all' },
    ],
    summary: 'how one figure came about, back to file, line and column',
    options: ['variant', 'scenario', 'seed', 'format', 'out'],
    examples: [
      'trace samples/first-bench tankless-one reduction.lead',
      'trace samples/fourteen-devices tankless-a reduction.lead --format json',
    ],
    load: () => import('../commands/trace.ts'),
  },
  {
    name: 'lookup',
    args: [{ name: 'text', about: 'a key, name, alias or CAS number of an analyte' }],
    summary: 'an analyte, its aliases, units and reference levels',
    options: ['format', 'out'],
    examples: ['lookup lead', 'lookup 7440-38-2 --format json'],
    load: () => import('../commands/lookup.ts'),
  },
];
