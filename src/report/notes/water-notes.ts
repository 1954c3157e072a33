import type { DeviceDrain, WaterScenario } from '../../analyse/index.ts';
import { STANDARD, type WaterUseRow } from '../../model/index.ts';
import type { NotesInput } from './notes-input.ts';
import { deviceNames, subjectName } from './subjects.ts';

/** One device in one state in one scenario, named for print. */
export interface UseLine {
  readonly name: string;
  readonly row: WaterUseRow;
  readonly drain: DeviceDrain;
}

/** A device in one state with its rows in the order of the scenarios. */
export interface UseState {
  readonly name: string;
  readonly drain: DeviceDrain;
  readonly lines: readonly UseLine[];
}

export interface WaterNotes {
  readonly scenarios: readonly WaterScenario[];
  readonly lines: readonly UseLine[];
  readonly states: readonly UseState[];
  /** Smallest and largest total drain ratio of devices with a drain line, standard state. */
  range(scenario: string): { readonly lowest: UseLine | null; readonly highest: UseLine | null };
}

export function waterNotes(input: NotesInput): WaterNotes {
  const names = deviceNames(input.bench);
  const nameOf = (device: string, variant: string): string =>
    subjectName(names.get(device) ?? device, variant);
  const { drains, facts, scenarios } = input.waterUse;
  const printed = input.outcomes.waterUse.rows as readonly WaterUseRow[];
  const lines = facts.map(({ row, drain }) => ({
    name: nameOf(row.device, row.variant),
    row:
      printed.find(
        (each) =>
          each.device === row.device &&
          each.variant === row.variant &&
          each.scenario === row.scenario,
      ) ?? row,
    drain,
  }));
  return {
    scenarios: scenarios.filter(({ name }) => lines.some((line) => line.row.scenario === name)),
    lines,
    states: drains.map((drain) => ({
      name: nameOf(drain.device.values.device, drain.variant),
      drain,
      lines: lines.filter((line) => line.drain === drain),
    })),
    range: (scenario) => rangeOf(lines.filter(({ row }) => row.scenario === scenario)),
  };
}

function rangeOf(lines: readonly UseLine[]): ReturnType<WaterNotes['range']> {
  const known = lines
    .filter(
      ({ row, drain }) =>
        drain.device.values.drain_line === 'yes' &&
        drain.variant === STANDARD &&
        row.total_drain_ratio.estimate !== null,
    )
    .sort(
      (a, b) => (a.row.total_drain_ratio.estimate ?? 0) - (b.row.total_drain_ratio.estimate ?? 0),
    );
  return { lowest: known[0] ?? null, highest: known.at(-1) ?? null };
}
