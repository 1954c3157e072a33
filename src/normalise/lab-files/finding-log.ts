import { type Finding, type FindingCode, finding, type Place } from '../../findings/index.ts';

/** Findings of one file; the same matter is raised once, at the first row that holds it. */
export class FindingLog {
  readonly #findings: Finding[] = [];
  readonly #raised = new Set<string>();

  get findings(): readonly Finding[] {
    return this.#findings;
  }

  add(...items: readonly Finding[]): void {
    this.#findings.push(...items);
  }

  raise(code: FindingCode, subject: string, message: string, remedy: string, at: Place): void {
    const key = `${code}\u0001${subject}`;
    if (this.#raised.has(key)) return;
    this.#raised.add(key);
    this.#findings.push(finding(code, message, remedy, at));
  }
}
