import { type Finding, finding } from '../findings/index.ts';
import { type BenchRow, cellPlace } from '../model/index.ts';
import { type AnalyteIndex, analyteIndex } from '../reference/index.ts';

/** The analytes of the tables joined with those of the bench's analytes.csv. */
export function withExtraAnalytes(rows: readonly BenchRow<'analytes'>[]): {
  readonly index: AnalyteIndex;
  readonly findings: readonly Finding[];
} {
  const index = analyteIndex(
    rows.map((row) => ({
      key: row.values.key,
      name: row.values.name,
      cas: row.values.cas,
      unit: row.values.unit,
      aliases: row.values.aliases ?? [],
    })),
  );
  const findings = index.problems.flatMap((problem) => {
    const row = rows[problem.row];
    if (row === undefined) return [];
    return finding('analyte-duplicate', problem.message, problem.remedy, cellPlace(row, 'key'));
  });
  return { index, findings };
}
