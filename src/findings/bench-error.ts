import type { FindingCode } from './codes.ts';
import { type Finding, finding } from './finding.ts';
import { NOWHERE, type Place } from './place.ts';

/**
 * Thrown only when work cannot go on. It carries the same fields as a finding, so that the edge can
 * print it like one.
 */
export class BenchError extends Error {
  readonly finding: Finding;

  constructor(
    code: FindingCode,
    message: string,
    remedy: string,
    at: Place = NOWHERE,
    cause?: unknown,
  ) {
    super(message, cause === undefined ? undefined : { cause });
    this.name = 'BenchError';
    this.finding = finding(code, message, remedy, at);
  }

  get code(): FindingCode {
    return this.finding.code;
  }

  get remedy(): string {
    return this.finding.remedy;
  }

  get place(): Place {
    return this.finding.place;
  }
}
