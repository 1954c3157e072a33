import type { ReductionFact } from '../../analyse/index.ts';
import { levelVerdicts } from '../../analyse/level-verdict.ts';
import type { ReductionSummary } from '../../compare/index.ts';
import type { Bench, LevelVerdict, ReductionRow } from '../../model/index.ts';
import type { Analyte } from '../../reference/index.ts';
import { analyteGroups } from './analyte-words.ts';
import type { NotesInput } from './notes-input.ts';
import { deviceNames, type Subject, subjectName } from './subjects.ts';

/** A feed of an analyte, once for each sample of it. */
export interface AnalyteFeed {
  readonly event: string;
  readonly kind: 'natural' | 'spiked';
  readonly side: ReductionRow['feed'];
  readonly levels: readonly LevelVerdict[];
}

/** What one device did to one analyte, over its events. */
export interface DeviceReduction {
  readonly subject: Subject;
  /** Null where device and analyte never met in a sample. */
  readonly summary: ReductionSummary | null;
}

export interface AnalyteFacts {
  readonly analyte: Analyte;
  readonly feeds: readonly AnalyteFeed[];
  /** One for every device shown, in the state that stands for it. */
  readonly devices: readonly DeviceReduction[];
}

/** Reductions as the notes need them: by analyte, then by device. */
export interface ReductionNotes {
  readonly analytes: readonly AnalyteFacts[];
  /** Devices shown, each in its standard state or, without one, its first state. */
  readonly subjects: readonly Subject[];
  /** Every device and state with a product sample, in the order of the devices. */
  readonly states: readonly Subject[];
  readonly summaries: readonly ReductionSummary[];
}

export function reductionNotes(input: NotesInput): ReductionNotes {
  const { bench, reductions, summaries } = input;
  const states = shownStates(input, summaries);
  const subjects = input.devices.flatMap(
    (device) => states.find((state) => state.device.values.device === device) ?? [],
  );
  const analytes = new Map(reductions.map((fact) => [fact.analyte.key, fact.analyte]));
  return {
    subjects,
    states: states.filter((state) => summaries.some((summary) => isOf(summary, state))),
    summaries,
    analytes: [...analytes.values()].map((analyte) => ({
      analyte,
      feeds: feedsOf(
        bench,
        reductions.filter((fact) => fact.analyte.key === analyte.key),
      ),
      devices: subjects.map((subject) => ({
        subject,
        summary:
          summaries.find(
            (summary) => isOf(summary, subject) && summary.analyte.key === analyte.key,
          ) ?? null,
      })),
    })),
  };
}

export function isOf(
  item: { readonly device: string; readonly variant: string },
  subject: Subject,
): boolean {
  return item.device === subject.device.values.device && item.variant === subject.variant;
}

/** The states of the devices shown: the standard one in front, then those with samples. */
function shownStates(input: NotesInput, summaries: readonly ReductionSummary[]): Subject[] {
  const names = deviceNames(input.bench);
  const { variants = [] } = input.filters;
  return input.bench.tables.devices.flatMap((device) => {
    const key = device.values.device;
    if (!input.devices.includes(key)) return [];
    const tested = summaries.flatMap((item) => (item.device === key ? item.variant : []));
    const own = [...new Set([...(variants.length > 0 ? variants : ['standard']), ...tested])];
    return own.map((variant) => ({
      device,
      key,
      variant,
      name: subjectName(names.get(key) ?? key, variant),
    }));
  });
}

function feedsOf(bench: Bench, facts: readonly ReductionFact[]): AnalyteFeed[] {
  const feeds = new Map<string, AnalyteFeed>();
  for (const { row, analyte, feed } of facts) {
    const key = JSON.stringify([row.event, row.kind, row.feed.sample]);
    if (feed === null || feeds.has(key)) continue;
    feeds.set(key, {
      event: row.event,
      kind: row.kind,
      side: row.feed,
      levels: levelVerdicts(analyte, feed.interval, bench.settings.reference_levels ?? []),
    });
  }
  return [...feeds.values()];
}

/** A goal of zero: no lab result can show that it is met, and it is no limit. */
export function isZeroGoal({ value, kind }: LevelVerdict): boolean {
  return value === 0 && /^(MCLG|MRDLG)$/.test(kind);
}

/**
 * True for a verdict that says something: not on a goal of zero, and on a limit of zero (nothing
 * may be detected) only where something was.
 */
export function isTelling(level: LevelVerdict): boolean {
  return !isZeroGoal(level) && (level.value !== 0 || level.verdict === 'above');
}

/** Verdicts on the products of the events that a summary rests on. */
export function productLevels(summary: ReductionSummary): LevelVerdict[] {
  return summary.facts.flatMap((fact) => fact.row.reference_levels);
}

/**
 * How much an analyte calls for attention: 3 above a level in a natural feed or a product, 2 above
 * one in a spiked feed or left open, 1 above a goal of zero, 0 none of them.
 */
export function weightOf(facts: AnalyteFacts): number {
  const spiked = facts.feeds.filter(({ kind }) => kind === 'spiked');
  const levels = [
    ...facts.feeds.flatMap((feed) => (feed.kind === 'natural' ? feed.levels : [])),
    ...facts.devices.flatMap(({ summary }) => (summary === null ? [] : productLevels(summary))),
  ];
  const limits = levels.filter(isTelling);
  if (limits.some((level) => level.verdict === 'above')) return 3;
  const isOverSpiked = spiked.some((feed) =>
    feed.levels.some((level) => level.verdict === 'above' && isTelling(level)),
  );
  if (isOverSpiked || limits.some((level) => level.verdict === 'cannot-say')) return 2;
  return levels.some((level) => isZeroGoal(level) && level.verdict === 'above') ? 1 : 0;
}

/** Analytes that lead the notes, weightiest first, then by group, then in the order of the lab. */
export function leadingAnalytes(analytes: readonly AnalyteFacts[]): AnalyteFacts[] {
  return analyteGroups(analytes)
    .flatMap(({ items }) => items)
    .map((facts) => ({ facts, weight: weightOf(facts) }))
    .filter(({ weight }) => weight > 0)
    .sort((a, b) => b.weight - a.weight)
    .map(({ facts }) => facts);
}
