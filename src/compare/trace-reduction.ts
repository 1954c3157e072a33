import { type ReductionFact, type Side, standardUncertainty } from '../analyse/index.ts';
import { NOWHERE } from '../findings/index.ts';
import {
  type Bench,
  cellPlace,
  type LabResult,
  resultAt,
  resultPlace,
  type TraceRow,
} from '../model/index.ts';
import { type TraceStep, traceRows } from './trace-steps.ts';

/**
 * How a reduction came about: the formula, both sides, every result with its cell, its conversion
 * and its limits, and the row of samples.csv that ties it to the device.
 */
export function traceReduction(bench: Bench, facts: readonly ReductionFact[]): TraceRow[] {
  return traceRows(facts.flatMap((fact) => factSteps(bench, fact)));
}

function factSteps(bench: Bench, fact: ReductionFact): TraceStep[] {
  const { row } = fact;
  return [
    {
      depth: 0,
      what: `reduction of ${row.analyte} by ${row.device} (${row.variant}) at ${row.event}: ${row.outcome}`,
      value: row.reduction.estimate ?? row.reduction.interval_low,
      unit: 'fraction',
      formula:
        'plain bounds: 1 - product high / feed low and 1 - product low / feed high; then what is ' +
        'printed, with the uncertainty of both sides',
      place: NOWHERE,
    },
    bound('plain lower bound', row.reduction.low, 'product.high', 'feed.low', fact),
    bound('plain upper bound', row.reduction.high, 'product.low', 'feed.high', fact),
    ...printedSteps(fact),
    ...sideSteps(bench, 'feed', fact.feed, row.unit),
    ...sideSteps(bench, 'product', fact.product, row.unit),
  ];
}

function bound(
  what: string,
  value: number | null,
  above: 'product.high' | 'product.low',
  below: 'feed.low' | 'feed.high',
  { row }: ReductionFact,
): TraceStep {
  const numerator = above === 'product.high' ? row.product.high : row.product.low;
  const denominator = below === 'feed.low' ? row.feed.low : row.feed.high;
  return {
    depth: 1,
    what,
    value,
    unit: 'fraction',
    formula: `1 - ${numerator ?? 'unbounded'} / ${denominator ?? 'unbounded'}`,
    place: NOWHERE,
  };
}

/** What is printed, and the formula that leads there. */
function printedSteps({ row }: ReductionFact): TraceStep[] {
  const { estimate, interval_low, interval_high, confidence } = row.reduction;
  const step = (what: string, value: number | null, formula: string): TraceStep => ({
    depth: 1,
    what,
    value,
    unit: 'fraction',
    formula,
    place: NOWHERE,
  });
  if (row.outcome === 'untested') return [];
  const rise = step(
    'p-value of a rise, adjusted for all pairs and claims of the bench',
    row.rise_p,
    'one-sided difference of the readings, Benjamini-Hochberg',
  );
  if (estimate !== null) {
    const formula = `Fieller at ${confidence ?? 'no'} confidence, cut at complete removal`;
    return [
      step('lower end of the interval', interval_low, formula),
      step('upper end of the interval', interval_high, formula),
      { ...rise, unit: null },
    ];
  }
  const formula =
    '1 - product/feed at the limits of the true values: r - k u(r) below a reading r, and h with ' +
    'h - k u(h) = r above it';
  return [
    step('printed lower bound', interval_low, formula),
    step('printed upper bound', interval_high, formula),
    { ...rise, unit: null },
  ];
}

function sideSteps(
  bench: Bench,
  name: 'feed' | 'product',
  side: Side | null,
  unit: string,
): TraceStep[] {
  if (side === null) {
    return [
      { depth: 1, what: `${name}: not tested`, value: null, unit, formula: null, place: NOWHERE },
    ];
  }
  const { low, high } = side.interval;
  return [
    {
      depth: 1,
      what: `${name}: ${side.method}`,
      value: side.estimate,
      unit,
      formula: `from ${low} to ${Number.isFinite(high) ? high : 'unbounded'}`,
      place: NOWHERE,
    },
    ...(side.mostProbable === undefined ? [uncertaintyStep(name, side, unit)] : []),
    ...side.results.flatMap((index) => resultSteps(bench, index, unit)),
  ];
}

function uncertaintyStep(name: 'feed' | 'product', side: Side, unit: string): TraceStep {
  const { relative, additive, counting, from } = side.uncertainty;
  const counted = counting === 0 ? '' : ` + ${counting} c`;
  return {
    depth: 2,
    what: `standard uncertainty of the ${name}: ${SOURCE_WORDS[from]}`,
    value: side.estimate === null ? null : standardUncertainty(side.uncertainty, side.estimate),
    unit,
    formula: `u(c)^2 = ${additive}^2${counted} + (${relative} c)^2`,
    place: NOWHERE,
  };
}

const SOURCE_WORDS = {
  stated: 'stated by the lab',
  duplicates: 'from duplicates of the bench',
  assumed: 'assumed',
} as const;

function resultSteps(bench: Bench, index: number, unit: string): TraceStep[] {
  const result = resultAt(bench.results, index);
  const conversion = bench.results.conversions[result.conversion];
  const sample = bench.tables.samples[bench.results.sample[index] ?? -1];
  const steps: TraceStep[] = [
    {
      depth: 2,
      what: `result "${result.text}": ${kindWords(result)}`,
      value: result.kind === 'quantified' || result.kind === 'mostProbable' ? result.value : null,
      unit,
      formula: limitWords(result, unit),
      place: resultPlace(bench.results, index),
    },
  ];
  if (conversion !== undefined && conversion.steps.length > 0) {
    steps.push({
      depth: 3,
      what: `unit: ${conversion.fromUnit} to ${conversion.toUnit}`,
      value: null,
      unit: conversion.toUnit,
      formula: conversion.steps.join('; '),
      place: NOWHERE,
    });
  }
  if (sample !== undefined) {
    steps.push({
      depth: 3,
      what: `sample ${sample.values.sample}: ${sample.values.position}`,
      value: null,
      unit: null,
      formula: null,
      place: cellPlace(sample, 'sample'),
    });
  }
  return steps;
}

function kindWords(result: LabResult): string {
  switch (result.kind) {
    case 'quantified':
      return result.isEstimate ? 'quantified, marked as estimated' : 'quantified';
    case 'notDetected':
      return 'not detected';
    case 'notQuantified':
      return 'detected, not quantified';
    case 'aboveRange':
      return 'above the range of the method';
    case 'mostProbable':
      return `most probable number of tubes: ${result.tubes} grew`;
    case 'missing':
      return 'no result';
    default:
      return result satisfies never;
  }
}

function limitWords(result: LabResult, unit: string): string | null {
  const limits = [
    result.mdl === null ? null : `detection limit ${result.mdl} ${unit}`,
    result.rl === null ? null : `reporting limit ${result.rl} ${unit}`,
  ].filter((text) => text !== null);
  return limits.length === 0 ? null : limits.join(', ');
}
