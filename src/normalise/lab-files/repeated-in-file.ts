import { finding, type Place } from '../../findings/index.ts';
import type { ResultTableBuilder, TableRow } from '../result-table-builder.ts';
import type { FindingLog } from './finding-log.ts';
import type { LayoutPlan } from './layout-plan.ts';
import { type Candidate, chooseResult } from './repeated-results.ts';

interface Resolved {
  count: number;
  readonly at: Place;
  readonly line: number;
}

/** Keeps one result for each sample and analyte of a file, by rule, and counts the others. */
export class RepeatedResults {
  readonly #plan: LayoutPlan;
  readonly #builder: ResultTableBuilder;
  readonly #log: FindingLog;
  /** By sample, then analyte: the position of the result in the table. */
  readonly #seen = new Map<number, Map<number, number>>();
  readonly #candidates: Candidate[] = [];
  readonly #start: number;
  readonly #resolved = new Map<string, Resolved>();
  #refused = 0;
  #dissolved: { count: number; readonly at: Place } | null = null;

  constructor(plan: LayoutPlan, builder: ResultTableBuilder, log: FindingLog) {
    this.#plan = plan;
    this.#builder = builder;
    this.#log = log;
    this.#start = builder.length;
  }

  add(candidate: Candidate, placed: { readonly row: TableRow; readonly at: () => Place }): void {
    const { row } = placed;
    const ofSample = this.#seen.get(row.sample) ?? new Map<number, number>();
    this.#seen.set(row.sample, ofSample);
    const at = ofSample.get(row.analyte);
    if (at === undefined) {
      const position = this.#builder.add(row);
      ofSample.set(row.analyte, position);
      this.#candidates[position - this.#start] = candidate;
      if (candidate.fraction === 'dissolved') {
        if (this.#dissolved === null) this.#dissolved = { count: 1, at: placed.at() };
        else this.#dissolved.count += 1;
      }
      return;
    }
    const earlier = this.#candidates[at - this.#start] ?? candidate;
    const choice = chooseResult(earlier, candidate, this.#plan);
    if (choice === null) {
      this.#refuse(this.#builder.lineAt(at), placed.at());
      return;
    }
    const resolved = this.#resolved.get(choice.reason);
    if (resolved !== undefined) resolved.count += 1;
    else {
      const line = this.#builder.lineAt(at);
      this.#resolved.set(choice.reason, { count: 1, at: placed.at(), line });
    }
    if (choice.keepsFirst) return;
    this.#builder.replace(at, row);
    this.#candidates[at - this.#start] = candidate;
  }

  #refuse(line: number, at: Place): void {
    this.#refused += 1;
    this.#log.add(
      finding(
        'result-repeated',
        `this sample and analyte already have a result in line ${line}`,
        'ask the lab which of the two counts; a second bottle needs a sample of its own',
        at,
      ),
    );
  }

  /** Reports what was resolved. @returns how many rows are no results after all */
  report(count: (reason: string, rows: number) => void): number {
    let rows = this.#refused;
    count('asked: repeated', this.#refused);
    for (const [reason, resolved] of this.#resolved) {
      rows += resolved.count;
      count(reason, resolved.count);
      this.#log.add(
        finding(
          'result-repeat-resolved',
          `${resolved.count} ${resolved.count === 1 ? 'result stands' : 'results stand'} beside ` +
            `another of the same sample and analyte and were left out: ${reason}; ` +
            `the first pair is this row and line ${resolved.line}`,
          'none needed if the rule is right; docs/lab-layouts.md lists the rules',
          resolved.at,
        ),
      );
    }
    if (this.#dissolved !== null) {
      this.#log.add(
        finding(
          'result-fraction',
          `${this.#dissolved.count} of the results are of the dissolved fraction`,
          'compare them with results of the same fraction only',
          this.#dissolved.at,
        ),
      );
    }
    return rows;
  }
}
