import type { FilterLifeRow } from '../../model/index.ts';
import { atMostDigits } from '../format-number.ts';
import { percentRange } from '../format-percent.ts';
import type { View } from '../view.ts';

/** How far each target was met along the volume treated. */
export function filterLifeViews(rows: readonly FilterLifeRow[]): View[] {
  const ends = rows.filter(({ first_missed_L }) => first_missed_L !== null).length;
  const releases = rows.filter(({ release_L }) => release_L !== null).length;
  const shown = rows.filter(({ target, release_L }) => target !== null || release_L !== null);
  return [
    {
      caption: `Reduction along the volume treated: ${rows.length} rows, ${ends} with a target shown to be missed, ${releases} with a release after an earlier reduction`,
      columns: [
        { head: 'Device', align: 'left' },
        { head: 'Analyte', align: 'left' },
        { head: 'Target', align: 'left' },
        { head: 'Volumes tested, L: reduction', align: 'left' },
        { head: 'Last shown met, L', align: 'right' },
        { head: 'First shown missed, L', align: 'right' },
        { head: 'Release, L', align: 'right' },
        { head: 'Of the rated capacity', align: 'left' },
      ],
      rows: shown.map((row) => [
        row.variant === 'standard' ? row.device : `${row.device} (${row.variant})`,
        row.kind === 'spiked' ? `${row.analyte} (spiked)` : row.analyte,
        targetText(row),
        row.points.map(pointText).join('; '),
        litres(row.last_met_L),
        `${litres(row.first_missed_L)}${isMissedFirmly(row) ? '' : ', apparent'}`,
        releaseText(row),
        row.rated.map(ratedText).join('; '),
      ]),
      legend: [
        'Analytes without a target and without a release stand in the JSON and CSV formats only.',
        'Between the last volume shown to meet a target and the first shown to miss it nothing is known; beyond the last volume tested neither. A volume that cannot say moves neither figure.',
        'Release: more in the product than in the feed after an earlier reduction. Apparent: on assumed uncertainty alone. Retest before publishing.',
        'Volumes are those of samples.csv for the device as a whole; a part that was changed on the way is not known here.',
        'A before/after test of these samples on this feed and this specimen; no certification.',
      ],
    },
  ];
}

/** False where the volume at which a target is first missed rests on assumed uncertainty alone. */
export function isMissedFirmly({ first_missed_L, points }: FilterLifeRow): boolean {
  return (
    first_missed_L === null ||
    points.some(
      ({ throughput_L, target, firm }) =>
        throughput_L === first_missed_L && target === 'missed' && firm,
    )
  );
}

function litres(volume: number | null): string {
  return volume === null ? '' : atMostDigits(volume, 4);
}

function targetText({ target, unit }: FilterLifeRow): string {
  if (target === null) return 'none';
  const figure =
    target.comparator === 'at-least'
      ? `at least ${atMostDigits(target.value * 100, 8)} %`
      : `at most ${atMostDigits(target.value, 4)} ${unit}`;
  return `${figure} (${target.from})`;
}

function pointText(point: FilterLifeRow['points'][number]): string {
  return `${litres(point.throughput_L)}: ${outcomeText(point)}${point.target === null ? '' : `, ${point.target.replaceAll('-', ' ')}`}`;
}

function outcomeText(point: FilterLifeRow['points'][number]): string {
  const { outcome, reduction_low, reduction_high, firm } = point;
  switch (outcome) {
    case 'untested':
      return 'not tested';
    case 'rise':
      return firm ? 'rise' : 'apparent rise';
    case 'untestable':
      return 'feed too low to show';
    case 'not-shown':
      return 'no reduction shown';
    case 'at-least':
      return percentRange(reduction_low, null);
    case 'between':
    case 'measured':
      return percentRange(reduction_low, reduction_high);
    default:
      return outcome satisfies never;
  }
}

function releaseText({ release_L, release_firm }: FilterLifeRow): string {
  if (release_L === null) return '';
  return release_firm === true ? litres(release_L) : `${litres(release_L)}, apparent`;
}

function ratedText({
  from,
  capacity_L,
  tested_share,
  missed_before,
}: FilterLifeRow['rated'][number]): string {
  const share = tested_share === null ? '' : `${atMostDigits(tested_share * 100, 2)} % of `;
  return `${share}${litres(capacity_L)} L (${from})${missed_before ? ', missed before it' : ''}`;
}
