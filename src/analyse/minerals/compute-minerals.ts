import type { Finding } from '../../findings/index.ts';
import type { Bench, MineralRow } from '../../model/index.ts';
import type { ReductionFact } from '../reduction-fact.ts';
import { resultUncertainties } from '../uncertainty/index.ts';
import { comparisonWaters } from './comparison-waters.ts';
import { contentFigures } from './content-figures.ts';
import { gainFigures } from './gain-figures.ts';
import { indexFigures } from './index-figures.ts';
import { mineralRowOf, type RowFigure } from './mineral-row.ts';
import { type MeasuredWater, measuredWaters } from './mineral-waters.ts';
import { ionRejections, solidsReductions, stageRejections } from './rejection-figures.ts';
import { hasMineralStage, solidsNotes } from './solids-behind-stage.ts';

export interface Minerals {
  readonly rows: readonly MineralRow[];
  readonly findings: readonly Finding[];
}

/**
 * What every water of a bench holds of its minerals, what a mineral stage adds, what a device with
 * such a stage rejects, and what a water may dissolve or precipitate.
 *
 * @param facts the reductions of the same bench
 */
export function computeMinerals(bench: Bench, facts: readonly ReductionFact[]): Minerals {
  const waters = measuredWaters(bench, resultUncertainties(bench));
  const rows = waters.flatMap((water) => [
    ...contentFigures(water).map((figure) => mineralRowOf(bench, water, figure)),
    ...stageRows(bench, waters, water, facts),
    ...indexFigures(water).map((figure) => mineralRowOf(bench, water, figure)),
  ]);
  return { rows, findings: solidsNotes(bench, markedDevices(rows)) };
}

function stageRows(
  bench: Bench,
  waters: readonly MeasuredWater[],
  water: MeasuredWater,
  facts: readonly ReductionFact[],
): MineralRow[] {
  if (water.position !== 'product' || !hasMineralStage(bench, water.device)) return [];
  const compared = comparisonWaters(bench, waters, water);
  const own = facts.filter(
    ({ row }) =>
      row.device === water.device &&
      row.variant === water.variant &&
      row.event === water.event &&
      row.kind === water.kind,
  );
  const of = (at: MeasuredWater, figures: readonly RowFigure[]): MineralRow[] =>
    figures.map((figure) => mineralRowOf(bench, at, figure));
  return [
    ...of(water, gainFigures(bench, water, compared)),
    ...of(water, solidsReductions(own)),
    ...(compared.stage === null ? [] : of(compared.stage, stageRejections(bench, compared))),
    ...of(water, ionRejections(bench, compared, water, own)),
  ];
}

/** Devices whose fall in dissolved solids is printed and is no rejection. */
function markedDevices(rows: readonly MineralRow[]): ReadonlySet<string> {
  return new Set(
    rows.flatMap(({ notes, device }) =>
      notes.includes('not-a-measure-of-rejection') && device !== null ? [device] : [],
    ),
  );
}
