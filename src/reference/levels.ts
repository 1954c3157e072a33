import type { Analyte } from './analyte.ts';
import { tableAnalytes } from './analyte-table.ts';
import { conversionTo } from './basis.ts';
import { areSiblings } from './dimensions.ts';
import { addRatio, exactRatio, multiplyRatio, type Ratio, ratioValue } from './ratio.ts';
import { unitNamed } from './read-unit.ts';
import { EDITIONS, LEVEL_ROWS, type LevelRow } from './tables/levels.ts';

/**
 * A published level for an analyte in drinking water.
 *
 * `value` and `low` are in `unit` and `basis`, as the source prints them; `canonicalValue` and
 * `canonicalLow` in the unit and basis the analyte is kept in, null where `notConverted` says why.
 * `plain` is false for what is no limit: proposed, withdrawn, historic, trigger and screening kinds, and
 * the denominators of a hazard index. Limits that end or begin to apply are plain, and their kind says
 * the year: `parametric value until 2036`.
 */
export interface ReferenceLevel {
  readonly analyte: string;
  readonly jurisdiction: string;
  readonly kind: string;
  readonly low: number | null;
  readonly value: number | null;
  readonly unit: string;
  readonly basis: string | null;
  readonly note: string | null;
  readonly source: string;
  readonly edition: string | null;
  /** `from memory`, or `seen: …` with the copy in which the value was read. */
  readonly verified: string;
  readonly isSeen: boolean;
  readonly plain: boolean;
  readonly canonicalLow: number | null;
  readonly canonicalValue: number | null;
  readonly notConverted: string | null;
}

/** The jurisdictions of the tables, as bench.json names them. */
export const JURISDICTIONS: readonly string[] = Object.keys(LEVEL_ROWS);

/**
 * Reference levels of an analyte, in the order of the tables.
 *
 * @param analyte its key, or the analyte itself where a bench keeps it in another unit
 * @param jurisdictions those wanted, in any order; all when left out, none when empty
 * @returns an empty list for an analyte without levels, and for one of the bench's own
 * @example levelsOf('barium', ['US-EPA'])[0].canonicalValue // 2000, in ug/L
 */
export function levelsOf(
  analyte: string | Analyte,
  jurisdictions: readonly string[] = JURISDICTIONS,
): readonly ReferenceLevel[] {
  const key = typeof analyte === 'string' ? analyte : analyte.key;
  const known = tableLevels().get(key);
  if (known === undefined) return [];
  const isOwnUnit = typeof analyte !== 'string' && analyte.unit !== known.analyte.unit;
  const levels = isOwnUnit ? levelsIn(analyte, known.rows) : known.levels;
  return levels.filter((level) => jurisdictions.includes(level.jurisdiction));
}

interface PlacedRow {
  readonly jurisdiction: string;
  readonly row: LevelRow;
}

interface AnalyteLevels {
  readonly analyte: Analyte;
  readonly rows: readonly PlacedRow[];
  readonly levels: readonly ReferenceLevel[];
}

let table: ReadonlyMap<string, AnalyteLevels> | null = null;

function tableLevels(): ReadonlyMap<string, AnalyteLevels> {
  if (table !== null) return table;
  const rows = new Map<string, PlacedRow[]>();
  for (const jurisdiction of JURISDICTIONS) {
    for (const row of LEVEL_ROWS[jurisdiction] ?? []) {
      const placed = rows.get(row[0]) ?? [];
      placed.push({ jurisdiction, row });
      rows.set(row[0], placed);
    }
  }
  const built = new Map<string, AnalyteLevels>();
  for (const analyte of tableAnalytes()) {
    const own = rows.get(analyte.key);
    if (own === undefined) continue;
    built.set(analyte.key, { analyte, rows: own, levels: levelsIn(analyte, own) });
  }
  table = built;
  return built;
}

function levelsIn(analyte: Analyte, rows: readonly PlacedRow[]): readonly ReferenceLevel[] {
  return rows.map(({ row, jurisdiction }) => levelOfRow(row, jurisdiction, analyte));
}

const NO_PLAIN_LIMIT = /proposed|withdrawn|historic|trigger|screening|HBWC/;

function levelOfRow(row: LevelRow, jurisdiction: string, analyte: Analyte): ReferenceLevel {
  const [key, kind, low, value, unit, basis, note, source, verified] = row;
  const link = canonicalLink(row, analyte);
  const canonical = (text: string) =>
    text === '' || typeof link === 'string' ? null : ratioValue(link(exactRatio(text)));
  return {
    analyte: key,
    jurisdiction,
    kind,
    low: numberOf(low),
    value: numberOf(value),
    unit,
    basis: textOf(basis),
    note: textOf(note),
    source,
    edition: EDITIONS[source] ?? null,
    verified,
    isSeen: verified.startsWith('seen'),
    plain: !NO_PLAIN_LIMIT.test(kind),
    canonicalLow: canonical(low),
    canonicalValue: canonical(value),
    notConverted: typeof link === 'string' ? link : null,
  };
}

/** The way from the printed figure to the canonical one, or why there is none. */
function canonicalLink(row: LevelRow, analyte: Analyte): ((figure: Ratio) => Ratio) | string {
  const [, , , value, unitName, basis] = row;
  if (value === '') return 'the rule states no number';
  const unit = unitNamed(unitName);
  const canonical = unitNamed(analyte.unit);
  if (unit === undefined || canonical === undefined) {
    return `${unitName} does not convert to ${analyte.unit}`;
  }
  // No organisms are no organisms, however they were counted.
  if (Number(value) === 0 && areSiblings(unit.dimension, canonical.dimension)) {
    return (figure) => figure;
  }
  const conversion = conversionTo(analyte, unit, textOf(basis));
  if (conversion.kind === 'problem') return conversion.message;
  return (figure) => {
    const product = multiplyRatio(figure, conversion.ratio);
    const sum = product === null ? null : addRatio(product, conversion.offset);
    return sum ?? figure;
  };
}

function numberOf(text: string): number | null {
  return text === '' ? null : Number(text);
}

function textOf(text: string): string | null {
  return text === '' ? null : text;
}
