import type { NondetectBound, ReductionOutcome } from '../../../src/model/index.ts';
import type { ErrorShape } from './lab-readings.ts';
import {
  type CellCount,
  FEEDS,
  GRID,
  REDUCTIONS,
  RELATIVES,
  simulateCell,
} from './simulate-statements.ts';

const OUTCOMES: readonly ReductionOutcome[] = [
  'measured',
  'between',
  'at-least',
  'rise',
  'not-shown',
  'untestable',
];

/** The page docs/printed-statements.md: same trials and seed, same text. @public */
export function printedStatementsPage(options: { trials: number; seed: number }): string {
  const run = (shape: ErrorShape, bound: NondetectBound, trials: number): CellCount[] =>
    GRID.map((cell, index) =>
      simulateCell(cell, index, { seed: options.seed, trials, shape, bound }),
    );
  const normal = run('normal', 'reporting', options.trials);
  const fewer = Math.max(1, Math.round(options.trials / 5));
  return `${[
    ...introduction(options),
    ...section('Normal errors, bounded by the reporting limit', normal),
    ...everyCell(normal),
    ...section(
      'Lognormal errors, bounded by the reporting limit',
      run('lognormal', 'reporting', fewer),
    ),
    ...section('Normal errors, bounded by the detection limit', run('normal', 'detection', fewer)),
    'The last section shows what a detection limit is: a limit that decides what is reported. A sample',
    'whose true content lies at it is reported as not detected about every second time, so a bound at',
    'it describes the report, not the water. Such bounds carry no confidence (`confidence` is null).',
  ].join('\n')}\n`;
}

function introduction({ trials, seed }: { trials: number; seed: number }): string[] {
  const list = (values: readonly number[], scale = 1): string =>
    values.map((value) => Number((value * scale).toPrecision(6))).join(', ');
  return [
    '# How often a printed reduction is false',
    '',
    `Simulated: ${trials} trials in each of ${GRID.length} cells, seed ${seed}, confidence 95 %. Written by`,
    '`node scripts/printed-statements.mjs`; nobody edits it. In every trial a feed and a product are',
    'read with error, reported as a laboratory would, judged and printed; the printed text is false',
    'where its figures exclude the truth, or where it says "rise" of a product that does not lie above',
    'its feed. "No reduction shown" and "feed too low to show" claim nothing and are never false.',
    '',
    `- True reduction (%): ${list(REDUCTIONS, 100)}`,
    `- True feed (reporting limits): ${list(FEEDS)}`,
    `- Relative standard uncertainty of one result (%): ${list(RELATIVES, 100)}`,
    '- Limits: reporting limit 3.18 detection limits; below it the standard deviation tends to the',
    '  detection limit / 3.14. Readings between the limits are reported as detected, not quantified.',
    '- One pair of feed and product, uncertainty as stated by the lab, no correlation.',
    '- No product holds more than its feed, so every rise that is printed here is false.',
    '',
    `Sampling error of a share of 5 %: ${percent(standardError(trials), 2)} (one standard error).`,
    '',
  ];
}

function standardError(trials: number): number {
  return Math.sqrt((0.05 * 0.95) / trials);
}

function section(title: string, counts: readonly CellCount[]): string[] {
  const share = (count: CellCount): number => count.falsePrinted / count.trials;
  const worst = [...counts].sort((a, b) => share(b) - share(a));
  const above = counts.filter((count) => share(count) > 0.05).length;
  const beyond = counts.filter((count) => share(count) > beyondChance(count.trials)).length;
  return [
    `## ${title}`,
    '',
    `${counts[0]?.trials ?? 0} trials a cell. Highest share of false statements: ${percent(share(worst[0] as CellCount), 2)}. Cells above 5 %: ${above};`,
    `above 5 % by more than three standard errors: ${beyond}.`,
    '',
    '| outcome | printed (% of all trials) | of these false (%) |',
    '| --- | ---: | ---: |',
    ...OUTCOMES.map((outcome) => {
      const printed = sum(counts, (count) => count.outcomes.get(outcome) ?? 0);
      const wrong = sum(counts, (count) => count.falseOutcomes.get(outcome) ?? 0);
      const all = sum(counts, (count) => count.trials);
      return `| ${outcome} | ${figure(printed / all)} | ${printed === 0 ? '' : figure(wrong / printed)} |`;
    }),
    '',
    'The ten cells with the most false statements:',
    '',
    '| true reduction (%) | feed (RL) | uncertainty (%) | false (%) | before rounding (%) | printed most |',
    '| ---: | ---: | ---: | ---: | ---: | --- |',
    ...worst.slice(0, 10).map((count) => {
      const { reduction, feed, relative } = count.cell;
      const [most] = [...count.outcomes].sort((a, b) => b[1] - a[1]);
      return `| ${short(reduction * 100)} | ${feed} | ${short(relative * 100)} | ${figure(share(count))} | ${figure(count.falseFigures / count.trials)} | ${most?.[0] ?? ''} |`;
    }),
    '',
  ];
}

/** The share beyond which a cell is above 5 % for more than chance: three standard errors. */
export function beyondChance(trials: number): number {
  return 0.05 + 3 * standardError(trials);
}

function everyCell(counts: readonly CellCount[]): string[] {
  return RELATIVES.flatMap((relative) => [
    `### Every cell at ${short(relative * 100)} %: false, and in brackets what claims something (%)`,
    '',
    `| feed (RL) | ${REDUCTIONS.map((reduction) => `R ${short(reduction * 100)} %`).join(' | ')} |`,
    `| ---: | ${REDUCTIONS.map(() => '---:').join(' | ')} |`,
    ...FEEDS.map((feed) => {
      const cells = REDUCTIONS.map((reduction) => {
        const count = counts.find(
          ({ cell }) =>
            cell.relative === relative && cell.feed === feed && cell.reduction === reduction,
        );
        return count === undefined
          ? ''
          : `${figure(count.falsePrinted / count.trials)} (${claimed(count)})`;
      });
      return `| ${feed} | ${cells.join(' | ')} |`;
    }),
    '',
  ]);
}

function claimed({ outcomes, trials }: CellCount): string {
  const silent = (outcomes.get('not-shown') ?? 0) + (outcomes.get('untestable') ?? 0);
  return ((100 * (trials - silent)) / trials).toFixed(0);
}

function sum(counts: readonly CellCount[], pick: (count: CellCount) => number): number {
  return counts.reduce((total, count) => total + pick(count), 0);
}

const figure = (share: number): string => (100 * share).toFixed(2);
const percent = (share: number, places: number): string => `${(100 * share).toFixed(places)} %`;
const short = (value: number): string => String(Number(value.toPrecision(6)));
