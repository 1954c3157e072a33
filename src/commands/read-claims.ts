import type { Claim, ClaimTarget } from '../analyse/claims/index.ts';
import { type Finding, finding } from '../findings/index.ts';
import { type Bench, type BenchRow, cellPlace, type QuantityPart } from '../model/index.ts';
import { readQuantity } from '../normalise/index.ts';
import {
  type Analyte,
  type AnalyteReading,
  applyLinear,
  conversionTo,
  type Dimension,
  exactRatio,
  ratioValue,
  standardNamed,
  unitNamed,
} from '../reference/index.ts';

/** The claims of a bench, read, with what could not be read about them. */
export interface ReadClaims {
  readonly claims: readonly Claim[];
  readonly findings: readonly Finding[];
}

/**
 * Reads the rows of claims.csv: which analyte they mean and which figure they name.
 *
 * A reduction is written `98 %` or `4 log`, a level `10 ug/L`. A claim that cannot be held against
 * results stays in the list, without a target; that its analyte is not known was told when the bench
 * was read.
 */
export function readClaims(bench: Bench): ReadClaims {
  const findings: Finding[] = [];
  const claims = bench.tables.claims.map((row): Claim => {
    const { analyte: name, standard } = row.values;
    const reading = name === null ? null : analyteNamed(bench, name);
    const found = reading?.kind === 'found' ? reading : null;
    return {
      row,
      analyte: found?.analyte ?? null,
      target: found === null ? null : targetOf(bench, row, found.analyte, found.basis, findings),
      standard: standard === null ? null : standardNamed(standard),
    };
  });
  return { claims, findings };
}

function analyteNamed(bench: Bench, text: string): AnalyteReading {
  const known = bench.analytes.byKey(text);
  return known === undefined
    ? bench.analytes.resolve(text, null)
    : { kind: 'found', analyte: known, basis: null, via: 'key' };
}

function targetOf(
  bench: Bench,
  row: BenchRow<'claims'>,
  analyte: Analyte,
  basis: string | null,
  findings: Finding[],
): ClaimTarget | null {
  const { comparator, value } = row.values;
  if (comparator === null || value === null) return null;
  const tell = (message: string, remedy: string): null => {
    findings.push(finding('claim-value-unreadable', message, remedy, cellPlace(row, 'value')));
    return null;
  };
  const reading = readQuantity(value, {
    dimensions: dimensionsFor(analyte),
    headerUnit: null,
    measures: bench.settings.measures ?? null,
    isStopwatch: false,
  });
  if ('problem' in reading) return tell(reading.message, reading.remedy);
  const [part, ...others] = reading.value.parts;
  if (part === undefined || others.length > 0) {
    return tell(`"${value}" is not one figure`, 'write one figure, such as 98 % or 10 ug/L');
  }
  const target = comparator === 'at-most-level' ? levelOf(part, analyte, basis) : reductionOf(part);
  return typeof target === 'string'
    ? tell(target, 'write a reduction such as 98 %, or a level such as 10 ug/L')
    : target;
}

/** A reduction, or anything that may convert to the unit of the analyte. */
function dimensionsFor(analyte: Analyte): Dimension[] {
  const own = unitNamed(analyte.unit)?.dimension;
  return [
    'ratio',
    'log-reduction',
    ...(own === undefined ? [] : [own]),
    'mass-concentration',
    'amount-concentration',
    'charge-concentration',
    'hardness',
  ];
}

/** The fraction of `98 %` or `4 log`; otherwise what is wrong with it. */
export function reductionOf({
  number,
  unit,
}: QuantityPart): Extract<ClaimTarget, { kind: 'reduction' }> | string {
  const fraction =
    unit.name === '%'
      ? ratioValue(exactRatio(`${number}/100`))
      : unit.dimension === 'log-reduction'
        ? 1 - 10 ** -number
        : null;
  if (fraction === null) return `"${number} ${unit.name}" is no reduction`;
  return fraction > 0 && fraction <= 1
    ? { kind: 'reduction', fraction }
    : `a reduction of ${number} ${unit.name} is outside 0 to 100 %`;
}

function levelOf(
  { number, unit }: QuantityPart,
  analyte: Analyte,
  basis: string | null,
): ClaimTarget | string {
  const conversion = conversionTo(analyte, unit, basis);
  if (conversion.kind === 'problem') return conversion.message;
  const value = applyLinear(number, conversion.ratio, conversion.offset);
  return value >= 0 ? { kind: 'level', value } : `a level of ${number} ${unit.name}`;
}
