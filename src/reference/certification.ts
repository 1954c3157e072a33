import type { Analyte } from './analyte.ts';
import { tableAnalytes } from './analyte-table.ts';
import { conversionTo } from './basis.ts';
import { exactRatio, multiplyRatio, ratioValue } from './ratio.ts';
import { readUnit } from './read-unit.ts';
import {
  CERTIFICATION_ROWS,
  type CertificationRow,
  STANDARDS_WITHOUT_CHALLENGE,
} from './tables/certification.ts';

/**
 * What one certification standard challenges a device with.
 *
 * Figures are in the unit and basis the contaminant is kept in; null where the table states none or
 * where `notConverted` says why. `challengeText` and `productText` are as the table prints them.
 * A plausibility reference: it never proves that a device is certified.
 */
export interface CertificationChallenge {
  readonly standard: string;
  /** Key of the contaminant the standard names. */
  readonly contaminant: string;
  readonly unit: string;
  readonly challengeLow: number | null;
  readonly challengeHigh: number | null;
  readonly challengeText: string | null;
  readonly maxProduct: number | null;
  readonly productText: string | null;
  /** Lowest reduction, a fraction. */
  readonly minReduction: number | null;
  readonly note: string | null;
  readonly confidence: 'high' | 'medium' | 'low';
  readonly source: string;
  readonly verified: string;
  readonly notConverted: string | null;
  /** An earlier edition whose figures were replaced. */
  readonly isSuperseded: boolean;
}

/** Contaminants of the standards under which an analyte is challenged by another name. */
const CHALLENGED_AS: Readonly<Record<string, readonly string[]>> = {
  arsenic: ['arsenic-v'],
  chromium: ['chromium-6', 'chromium-3'],
  cryptosporidium: ['cysts'],
  giardia: ['cysts'],
  nitrate: ['nitrate-nitrite'],
  pfoa: ['pfoa-pfos-sum'],
  pfos: ['pfoa-pfos-sum'],
};

/**
 * The standard a text names, spelled as in the tables; null where it names none of them.
 *
 * @example standardNamed('NSF/ANSI 53-2023') // 'NSF/ANSI 53'
 * @example standardNamed('our own test') // null
 */
export function standardNamed(text: string): string | null {
  const name = text.toUpperCase();
  const family = /\b(NSF|ANSI|CAN|ASSE)\b(.*)$/.exec(name);
  const number = family === null ? null : /\bP?\d+\b/.exec(family[2] ?? '');
  if (family === null || number === null) return null;
  const wanted = family[1] === 'ASSE' ? `ASSE ${number[0]}` : number[0];
  return (
    STANDARDS.find((standard) => standard.split(' ').includes(wanted) || standard === wanted) ??
    null
  );
}

const STANDARDS: readonly string[] = [
  ...Object.keys(CERTIFICATION_ROWS),
  ...Object.keys(STANDARDS_WITHOUT_CHALLENGE),
];

/** What a standard without reduction limits of its own adds; null for the others. */
export function standardWithoutChallenge(standard: string): string | null {
  return STANDARDS_WITHOUT_CHALLENGE[standard]?.note ?? null;
}

/**
 * The challenges a standard sets for an analyte, under its own name first.
 *
 * @param standard as {@link standardNamed} gives it; all standards when null
 * @returns an empty list where the tables hold none
 * @example challengesOf('NSF/ANSI 53', 'lead')[1].maxProduct // 5, in ug/L
 */
export function challengesOf(standard: string | null, analyte: string): CertificationChallenge[] {
  const names = [analyte, ...(CHALLENGED_AS[analyte] ?? [])];
  return names.flatMap((name) =>
    table().filter(
      (row) => row.contaminant === name && (standard === null || row.standard === standard),
    ),
  );
}

let built: readonly CertificationChallenge[] | null = null;

function table(): readonly CertificationChallenge[] {
  if (built !== null) return built;
  const byKey = new Map(tableAnalytes().map((analyte) => [analyte.key, analyte]));
  built = Object.entries(CERTIFICATION_ROWS).flatMap(([standard, rows]) =>
    rows.map((row) => challengeOf(standard, row, byKey.get(row[0]))),
  );
  return built;
}

function challengeOf(
  standard: string,
  row: CertificationRow,
  analyte: Analyte | undefined,
): CertificationChallenge {
  const [contaminant, challenge, challengeUnit, product, productUnit, percent] = row;
  const [, , , , , , note, confidence, verified] = row;
  const ends = challenge.split(' to ');
  const feed = canonical(analyte, challengeUnit);
  const limit = canonical(analyte, productUnit);
  const problem = [feed, limit].find((one) => typeof one === 'string');
  const figure = (text: string | undefined, way: Way | string | null): number | null =>
    text === undefined || text === '' || way === null || typeof way === 'string' ? null : way(text);
  return {
    standard,
    contaminant,
    unit: analyte?.unit ?? challengeUnit,
    challengeLow: figure(ends[0], feed),
    challengeHigh: figure(ends.at(-1), feed),
    challengeText: challenge === '' ? null : `${challenge} ${challengeUnit}`,
    maxProduct: figure(product, limit),
    productText: product === '' ? null : `${product} ${productUnit}`,
    minReduction: percent === '' ? null : ratioValue(exactRatio(`${percent}/100`)),
    note: note === '' ? null : note,
    confidence,
    source: `${standard} reduction-claims table`,
    verified,
    notConverted: typeof problem === 'string' ? problem : null,
    isSuperseded: note.startsWith('Editions before'),
  };
}

type Way = (text: string) => number;

/** The way from a printed figure to the canonical unit, why there is none, or null without a unit. */
function canonical(analyte: Analyte | undefined, unitText: string): Way | string | null {
  if (unitText === '') return null;
  const reading = readUnit(unitText, {});
  if (analyte === undefined || reading.kind !== 'unit') return `${unitText} is not read`;
  const conversion = conversionTo(analyte, reading.unit, null);
  if (conversion.kind === 'problem') return conversion.message;
  return (text) => {
    const product = multiplyRatio(exactRatio(text), conversion.ratio);
    return product === null ? Number(text) * conversion.factor : ratioValue(product);
  };
}
