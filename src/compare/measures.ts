import type { FlowFact } from '../analyse/flow/index.ts';
import {
  type DeviceDrain,
  type ReductionFact,
  type SpreadFact,
  statementOptions,
} from '../analyse/index.ts';
import {
  type Bench,
  type CostRow,
  type IdleRiseRow,
  type Spread,
  STANDARD,
} from '../model/index.ts';
import { costMeasures } from './cost-measures.ts';
import { idleRiseMeasures } from './idle-rise-measures.ts';
import { type Measure, plainMeasure, rangedFigure } from './measure.ts';
import { type ReductionSummary, summariseReductions } from './reduction-summary.ts';
import { waterUseMeasures } from './water-use-measures.ts';

export interface MeasureInputs {
  readonly reductions: readonly ReductionFact[];
  readonly drains: readonly DeviceDrain[];
  /** Water use with its ranges, of every device and scenario. */
  readonly uses: readonly SpreadFact[];
  readonly flows: readonly FlowFact[];
  readonly costs: readonly CostRow[];
  readonly idleRise: readonly IdleRiseRow[];
}

/**
 * Every measure of every device, in a fixed order: reductions by analyte, water use, flow, costs, the
 * rise after a pause.
 *
 * A device without a figure still has its row, with the reason as outcome: what was not tested
 * never looks like zero. Of the rise only tested devices have rows.
 */
export function measuresOf(bench: Bench, inputs: MeasureInputs): Measure[] {
  const { confidence, instruments } = bench.settings;
  return [
    ...reductionMeasures(bench, summariseReductions(inputs.reductions, statementOptions(bench))),
    ...waterUseMeasures(inputs.drains, inputs.uses, confidence),
    ...flowMeasures(bench, inputs.flows),
    ...costMeasures(inputs.costs),
    ...idleRiseMeasures(inputs.idleRise, { confidence, tolerance: instruments.tds_tolerance }),
  ];
}

function reductionMeasures(bench: Bench, summaries: readonly ReductionSummary[]): Measure[] {
  const analytes = [...new Map(summaries.map((item) => [item.analyte.key, item.analyte])).values()];
  const variantsOf = (device: string): string[] => {
    const tested = summaries.flatMap((item) => (item.device === device ? item.variant : []));
    return [...new Set([STANDARD, ...tested])];
  };
  return analytes.flatMap((analyte) =>
    bench.tables.devices.flatMap(({ values: { device } }) =>
      variantsOf(device).map((variant): Measure => {
        const summary = summaries.find(
          (item) =>
            item.device === device && item.variant === variant && item.analyte.key === analyte.key,
        );
        return {
          row: {
            measure: `reduction.${analyte.key}`,
            title: `Reduction of ${analyte.name}`,
            unit: 'fraction',
            direction: analyte.kind === 'mineral-beneficial' ? 'none' : 'higher',
            device,
            variant,
            outcome: summary?.outcome ?? 'untested',
            low: summary?.low ?? null,
            estimate: summary?.estimate ?? null,
            high: summary?.high ?? null,
          },
          reduction: summary ?? null,
        };
      }),
    ),
  );
}

function flowMeasures(bench: Bench, flows: readonly FlowFact[]): Measure[] {
  return bench.tables.devices.flatMap(({ values: { device } }) => {
    const own = flows.filter(({ flow }) => flow.device === device);
    const variants = own.length > 0 ? own.map(({ flow }) => flow.variant) : [STANDARD];
    return variants.map((variant): Measure => {
      const fact = own.find(({ flow }) => flow.variant === variant);
      return plainMeasure({
        measure: 'pours.flow',
        title: 'Flow of clean water',
        unit: 'L/min',
        direction: 'higher',
        device,
        variant,
        ...rangedFigure(flowRange(fact)),
      });
    });
  });
}

function flowRange(fact: FlowFact | undefined): Spread {
  const range = fact?.uncertainty?.range ?? null;
  const estimate = fact?.flow.flowLPerMin ?? null;
  return {
    low: range === null ? null : Math.max(0, range.low),
    estimate,
    high: range?.high ?? null,
  };
}
