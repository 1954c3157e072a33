import {
  type FlushFigure,
  type Sweep,
  type SweepInput,
  TANK_FIGURES,
  type TankFigure,
} from '../analyse/index.ts';
import { BenchError, closestWord } from '../findings/index.ts';
import type { Bench } from '../model/index.ts';
import { BASE_UNITS, type Dimension } from '../reference/index.ts';
import { quantitySetting } from './quantity-setting.ts';

const MOST_VALUES = 1000;

/** Inputs without a rule, each with its dimension; `number` has no unit. */
const INPUTS: Readonly<Record<string, Dimension | 'number'>> = {
  'drain-ratio': 'number',
  'per-start': 'volume',
  flow: 'flow',
  pour: 'volume',
  'pours-per-day': 'number',
  'pour-factor': 'number',
};

const FLUSH_FIGURES: Readonly<Record<FlushFigure, readonly (Dimension | 'number')[]>> = {
  volume: ['volume'],
  after: ['time', 'volume'],
  'min-interval': ['time'],
  'drain-fraction': ['number'],
};

const TANK_DIMENSIONS: Readonly<Record<TankFigure, Dimension>> = {
  shell: 'volume',
  precharge: 'pressure',
  'feed-pressure': 'pressure',
  stop: 'pressure',
  restart: 'pressure',
  'permeate-flow': 'flow',
  'reject-flow': 'flow',
};

const FORM =
  'write <input>=<from>..<to> <unit> x <count>, or <input>=<value>, <value> <unit>, such as ' +
  '"flush.idle-flush.volume=0.2..1.5 L x 8"';

/**
 * A sweep as it is written on the command line or in the library:
 *
 * - `<input>=<from>..<to> <unit> x <count>`: so many values at equal steps, both ends among them; with
 *   `log` behind the count at equal ratios;
 * - `<input>=<value>, <value>, … <unit>`: these values; each may have a unit of its own, the last unit
 *   serves those without one.
 *
 * Inputs: `drain-ratio`, `per-start`, `flow`, `pour` (size of every pour of a scenario),
 * `pours-per-day` (of every row of a scenario), `pour-factor`, of a flush rule
 * `flush.<rule>.volume`, `.after`, `.min-interval`, `.drain-fraction`, and of a tank that tanks.csv
 * describes `tank.shell`, `.precharge`, `.feed-pressure`, `.stop`, `.restart`, `.permeate-flow`,
 * `.reject-flow`.
 * @throws {BenchError} option-unknown, or the problem of a quantity
 */
export function readSweep(bench: Bench, text: string): Sweep {
  const equals = text.indexOf('=');
  if (equals < 1) throw refused(text, 'it names no input', FORM);
  const name = text.slice(0, equals).trim();
  const { input, dimensions } = inputNamed(bench, text, name);
  const values = valuesText(text, text.slice(equals + 1).trim());
  const readings = dimensions.map((dimension) => {
    try {
      return { dimension, values: readValues(bench, text, values, dimension), error: null };
    } catch (error) {
      if (!(error instanceof BenchError)) throw error;
      return { dimension, values: [], error };
    }
  });
  const read = readings.find(({ error }) => error === null);
  const problem = readings[0]?.error;
  if (read === undefined) throw problem ?? refused(text, 'it cannot be read', FORM);
  return {
    name,
    input,
    values: read.values,
    unit: read.dimension === 'number' ? '1' : BASE_UNITS[read.dimension],
  };
}

function inputNamed(
  bench: Bench,
  text: string,
  name: string,
): { readonly input: SweepInput; readonly dimensions: readonly (Dimension | 'number')[] } {
  const own = Object.hasOwn(INPUTS, name) ? INPUTS[name] : undefined;
  if (own !== undefined) {
    return { input: { kind: name } as SweepInput, dimensions: [own] };
  }
  const figures = Object.keys(TANK_FIGURES) as TankFigure[];
  const ofTank = figures.find((figure) => name === `tank.${figure}`);
  if (ofTank !== undefined) {
    return { input: { kind: 'tank', figure: ofTank }, dimensions: [TANK_DIMENSIONS[ofTank]] };
  }
  const rules = [...new Set(bench.tables.flushRules.map(({ values }) => values.rule))];
  const named = rules.flatMap((rule) =>
    Object.entries(FLUSH_FIGURES).map(([figure, dimensions]) => ({
      name: `flush.${rule}.${figure}`,
      input: { kind: 'flush', rule, figure: figure as FlushFigure } as const,
      dimensions,
    })),
  );
  const found = named.find((one) => one.name === name);
  if (found !== undefined) return found;
  const ofTanks = figures.map((figure) => `tank.${figure}`);
  const all = [...Object.keys(INPUTS), ...named.map((one) => one.name), ...ofTanks];
  const near = closestWord(name, all);
  throw refused(
    text,
    `the bench has no input "${name}"`,
    near === null ? `name one of: ${all.slice(0, 20).join(', ')}` : `did you mean "${near}"?`,
  );
}

interface ValuesText {
  readonly texts: readonly string[];
  /** Null: just these values. */
  readonly steps: { readonly count: number; readonly isLog: boolean } | null;
}

function valuesText(text: string, values: string): ValuesText {
  const range = /^(.+?)\.\.(.+?)\s+x\s*(\d+)(\s+log)?$/.exec(values);
  if (range !== null) {
    const [, from = '', to = '', count = '', log] = range;
    const steps = { count: Number(count), isLog: log !== undefined };
    if (steps.count < 2 || steps.count > MOST_VALUES) {
      throw refused(text, `${count} values are asked for`, `ask for 2 to ${MOST_VALUES}`);
    }
    return { texts: [from.trim(), to.trim()], steps };
  }
  const texts = values.split(',').map((value) => value.trim());
  if (values.includes('..') || texts.some((value) => value === '')) {
    throw refused(text, 'its values cannot be read', FORM);
  }
  if (texts.length > MOST_VALUES) {
    throw refused(text, `it has ${texts.length} values`, `give at most ${MOST_VALUES}`);
  }
  return { texts, steps: null };
}

function readValues(
  bench: Bench,
  text: string,
  { texts, steps }: ValuesText,
  dimension: Dimension | 'number',
): number[] {
  const unit = /[^\d.\s].*$/.exec(texts.at(-1) ?? '')?.[0] ?? '';
  const numbers = texts.map((value) => readValue(bench, text, value, unit, dimension));
  if (steps === null) return numbers;
  const [from = 0, to = 0] = numbers;
  if (from === to || (steps.isLog && !(from > 0 && to > 0))) {
    throw refused(
      text,
      from === to ? 'both ends are one value' : 'equal ratios need ends above zero',
      FORM,
    );
  }
  return Array.from({ length: steps.count }, (_, index) => {
    if (index === steps.count - 1) return to;
    const part = index / (steps.count - 1);
    return steps.isLog ? from * (to / from) ** part : from + (to - from) * part;
  });
}

function readValue(
  bench: Bench,
  text: string,
  value: string,
  unit: string,
  dimension: Dimension | 'number',
): number {
  if (dimension === 'number') {
    if (!/^\d+(\.\d+)?$/.test(value)) throw refused(text, `"${value}" is not a number`, FORM);
    return Number(value);
  }
  const own = /^\d+(\.\d+)?$/.test(value) ? `${value} ${unit}` : value;
  // Nothing is a value too, where a quantity of a setting would be refused.
  const none = /^0+(?:\.0*)?\s*([^\d\s.].*)$/.exec(own);
  if (none !== null) {
    quantitySetting(bench, `1 ${none[1] ?? ''}`, dimension, '--sweep');
    return 0;
  }
  return quantitySetting(bench, own, dimension, '--sweep');
}

function refused(text: string, problem: string, remedy: string): BenchError {
  return new BenchError('option-unknown', `--sweep "${text}": ${problem}`, remedy);
}
