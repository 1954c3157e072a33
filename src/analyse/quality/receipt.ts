import { type Finding, finding } from '../../findings/index.ts';
import { type BenchRow, cellPlace } from '../../model/index.ts';
import { type BottleResults, bottleResults } from './bottle-results.ts';
import { type HoldingTime, holdingTime, isDueAtOnce } from './holding-time-table.ts';
import type { SampleResults } from './sample-results.ts';
import { firstNames, shortNumber } from './short-number.ts';

/** A bottle that arrives sooner has had no time to cool. */
const COOLING_HOURS = 8;

/** The limit the setting stands for; other limits of the table are as they are. */
const CHILLED_C = 6;

/**
 * What happened between the tap and the lab: time and temperature on receipt.
 *
 * A lab may start later than it receives: what had already run out on receipt has run out, what had
 * not may still. Bottles of one delivery share one finding.
 */
export function receiptFindings(view: SampleResults): Finding[] {
  const bottles = bottleResults(view).map((bottle) => ({
    ...bottle,
    times: byHoldingTime(view, bottle),
  }));
  const own = view.bench.settings.quality.receipt_temperature;
  return [
    ...bottles.flatMap(backwards),
    ...grouped(bottles, overdue),
    ...grouped(bottles, atOnce),
    ...grouped(bottles, (bottle) => temperature(bottle, own)),
  ];
}

/** A bottle with the names of its analytes by holding time. */
interface TimedBottle extends BottleResults {
  readonly times: ReadonlyMap<HoldingTime, readonly string[]>;
}

/** A finding of one bottle; bottles with equal keys share it. */
interface Draft {
  readonly key: string;
  readonly make: (samples: readonly string[]) => Finding;
}

function grouped(
  bottles: readonly TimedBottle[],
  draftsOf: (bottle: TimedBottle) => Draft[],
): Finding[] {
  const drafts = new Map<string, { readonly draft: Draft; readonly samples: string[] }>();
  for (const bottle of bottles) {
    for (const draft of draftsOf(bottle)) {
      const known = drafts.get(draft.key);
      if (known === undefined) {
        drafts.set(draft.key, { draft, samples: [bottle.row.values.sample] });
      } else {
        known.samples.push(bottle.row.values.sample);
      }
    }
  }
  return [...drafts.values()].map(({ draft, samples }) => draft.make(samples));
}

function backwards({ row, hours }: BottleResults): Finding[] {
  if (hours === null || hours >= 0) return [];
  return [
    finding(
      'bottle-time-backwards',
      `the lab received the bottle ${shortNumber(-hours)} h before the sample was taken`,
      'correct received_at, or taken_at in samples.csv',
      cellPlace(row, 'received_at'),
    ),
  ];
}

function byHoldingTime(view: SampleResults, bottle: BottleResults): Map<HoldingTime, string[]> {
  const times = new Map<HoldingTime, string[]>();
  for (const index of bottle.results) {
    const analyte = view.analyte(index);
    const own = holdingTime(analyte, bottle.row.values.preservative);
    if (own === null) continue;
    // Equal times of two rules are one time.
    const time =
      [...times.keys()].find(
        ({ hours, warmestC }) => hours === own.hours && warmestC === own.warmestC,
      ) ?? own;
    const names = times.get(time);
    if (names === undefined) times.set(time, [analyte.name]);
    else names.push(analyte.name);
  }
  return times;
}

function overdue({ row, hours, times }: TimedBottle): Draft[] {
  if (hours === null) return [];
  return [...times].flatMap(([time, names]) => {
    if (isDueAtOnce(time) || hours <= time.hours) return [];
    return {
      key: `${delivery(row)}\t${time.words}\t${names.join('\t')}`,
      make: (samples) =>
        finding(
          'holding-time-over',
          `on receipt ${firstNames(samples)} had stood ${shortNumber(hours)} h; at most ` +
            `${time.words} may pass before the analysis of ${firstNames(names)}`,
          'take a new sample; until then the results say little about the water at the tap',
          cellPlace(row, 'received_at'),
        ),
    };
  });
}

function atOnce({ row, hours, times }: TimedBottle): Draft[] {
  return [...times].flatMap(([time, names]) => {
    if (!isDueAtOnce(time) || (hours !== null && hours <= time.hours)) return [];
    return {
      key: row.values.lab,
      make: (samples) =>
        finding(
          'holding-time-field',
          `${firstNames(names)} of ${samples.length} bottles were measured in the lab; they change ` +
            `within ${time.words}`,
          'measure them beside the tap; a figure from the lab is a lower bound for chlorine',
          cellPlace(row, 'received_at'),
        ),
    };
  });
}

function temperature({ row, hours, times }: TimedBottle, own: number): Draft[] {
  const celsius = row.values.receipt_temperature?.value ?? null;
  if (celsius === null) return [];
  const key = `${delivery(row)}\t${celsius}`;
  if (celsius < 0) {
    return [
      {
        key,
        make: (samples) =>
          finding(
            'receipt-frozen',
            `${firstNames(samples)} arrived at ${shortNumber(celsius)} °C: ice bursts bottles, ` +
              'kills bacteria and drives out gases',
            'check the unit; if the bottles were frozen, take new samples',
            cellPlace(row, 'receipt_temperature'),
          ),
      },
    ];
  }
  const warm = [...times].flatMap(([time, names]) =>
    time.warmestC !== null && celsius > (time.warmestC === CHILLED_C ? own : time.warmestC)
      ? names
      : [],
  );
  if (warm.length === 0 || (hours !== null && hours < COOLING_HOURS)) return [];
  return [
    {
      key: `${key}\t${warm.join('\t')}`,
      make: (samples) =>
        finding(
          'receipt-warm',
          `${firstNames(samples)} arrived at ${shortNumber(celsius)} °C; cool transport is asked ` +
            `for ${firstNames(warm)}`,
          'send samples on ice; take new ones where these analytes matter',
          cellPlace(row, 'receipt_temperature'),
        ),
    },
  ];
}

/** Bottles that came together. */
function delivery(row: BenchRow<'bottles'>): string {
  return `${row.values.lab}\t${row.values.received_at?.text ?? ''}`;
}
