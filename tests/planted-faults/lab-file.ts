import type { Cells } from './bench-text.ts';
import { LAB_LIST, type LabAnalyte, type Water } from './waters.ts';

/** One result as an invented laboratory prints it: three figures, `<` below its reporting limit. */
export function printed(value: number, { name, rl }: Pick<LabAnalyte, 'name' | 'rl'>): string {
  if (rl !== null && value < rl) return `<${rl}`;
  if (name === 'pH') return value.toFixed(2);
  const text = value.toPrecision(3);
  return text.includes('e') ? String(Number(text)) : text;
}

/** Rows of a long export with the sign inside the result. */
export function textRows(
  labSample: string,
  day: string,
  water: Water,
  list: readonly LabAnalyte[] = LAB_LIST,
): Cells[] {
  return inWater(water, list).map((item) => ({
    'Sample ID': labSample,
    Collected: day,
    Analyte: item.name,
    CAS: item.cas,
    Result: printed(water[item.name] ?? 0, item),
    Units: item.unit,
    MDL: limit(item.mdl),
    RL: limit(item.rl),
  }));
}

/** Rows of a long export with a column for the sign. */
export function signRows(
  labSample: string,
  day: string,
  water: Water,
  list: readonly LabAnalyte[] = LAB_LIST,
): Cells[] {
  return inWater(water, list).map((item) => {
    const text = printed(water[item.name] ?? 0, item);
    return {
      'Sample Number': labSample,
      'Date Collected': day,
      Compound: item.name,
      'CAS Number': item.cas,
      Sign: text.startsWith('<') ? '<' : '',
      Value: text.replace('<', ''),
      Units: item.unit,
      MDL: limit(item.mdl),
      MRL: limit(item.rl),
    };
  });
}

function inWater(water: Water, list: readonly LabAnalyte[]): LabAnalyte[] {
  return list.filter(({ name }) => water[name] !== undefined);
}

function limit(value: number | null): string {
  return value === null ? '' : String(value);
}
