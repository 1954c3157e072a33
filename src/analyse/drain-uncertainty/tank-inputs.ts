import type { WaterInputRow } from '../../model/index.ts';
import type { DeviceTank } from '../tank/index.ts';
import type { TankDraws, TankInput } from './tank-draws.ts';
import type { TankUncertainty } from './tank-uncertainty.ts';

type TankInputRow = Omit<WaterInputRow, 'device' | 'variant' | 'scenario'>;

/**
 * The figures of a tank as inputs of its water use. The gauge moves all pressures together and is an
 * input of its own; what stands at a pressure is its reading.
 *
 * @param drawn null: no draws
 * @param shareOf share of a column, one entry a draw, in the variance of the answer
 */
export function tankInputRows(
  { tank }: DeviceTank,
  open: TankUncertainty,
  drawn: TankDraws | null,
  shareOf: (column: Float64Array) => number | null,
): TankInputRow[] {
  const share = (input: TankInput): number | null => {
    if (drawn === null) return null;
    const { inputs, rejectFactor, tanks } = drawn;
    return shareOf(rejectFactor.map((_, draw) => inputs[input][draw % tanks.length] as number));
  };
  const row = (
    input: string,
    unit: string,
    estimate: number,
    standard_uncertainty: number,
    rests_on: WaterInputRow['rests_on'],
    shared: number | null,
  ): TankInputRow => ({
    input: `tank.${input}`,
    unit,
    estimate,
    standard_uncertainty,
    rests_on,
    share: shared,
  });
  const reading = (input: TankInput, estimate: number): TankInputRow =>
    row(input, 'kPa', estimate, open.readingKPa, 'tank figures', share(input));
  const { low, high } = open.osmotic;
  return [
    row('shell', 'L', tank.shellL, open.shellL, 'stated', share('shell')),
    row('gauge', 'kPa', 0, open.gaugeKPa, 'tank figures', share('gauge')),
    reading('precharge', tank.prechargeKPa),
    reading('feed-pressure', tank.feedKPa),
    reading('stop', tank.stopKPa),
    reading('restart', tank.restartKPa),
    row(
      'permeate-flow',
      'L/min',
      tank.openFlowLPerMin,
      open.permeateLPerMin,
      'tank figures',
      share('permeate-flow'),
    ),
    row(
      'reject-flow',
      'L/min',
      tank.rejectFlowLPerMin,
      open.rejectLPerMin,
      'tank figures',
      drawn === null ? null : shareOf(drawn.rejectFactor),
    ),
    ...(tank.osmoticKPa === undefined
      ? []
      : [
          row(
            'osmotic',
            'kPa',
            tank.osmoticKPa,
            ((high - low) * tank.osmoticKPa) / Math.sqrt(12),
            'assumed',
            share('osmotic'),
          ),
        ]),
  ];
}
