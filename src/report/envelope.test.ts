import { describe, expect, it } from 'vitest';
import { finding, place } from '../findings/index.ts';
import { envelopeSchema } from '../model/output-schemas.ts';
import { envelopeText } from './envelope.ts';
import type { Outcome } from './outcome.ts';

const late = finding('unit-missing', 'no unit', 'write one', place({ file: 'b.csv', line: 2 }));
const early = finding('unit-unknown', 'odd unit', 'write one', place({ file: 'a.csv', line: 9 }));

const OUTCOME: Outcome = {
  schema: 'water-curve/1',
  bench: { title: 'Two devices', edition: null, fingerprint: 'sha256:00' },
  inputs: [{ path: 'bench.json', sha256: '00', rows: null }],
  settings: { confidence: 0.95 },
  rows: [{ device: 'a', variant: 'standard', pour_mL: 250, total_drain_ratio: 0.1 + 0.2 }],
  findings: [late, early],
  views: [],
};

describe('the JSON envelope', () => {
  it('has the published keys in the published order', () => {
    expect(envelopeText(OUTCOME, '1.2.3')).toBe(`{
  "tool": {
    "name": "pourbench",
    "version": "1.2.3"
  },
  "schema": "water-curve/1",
  "bench": {
    "title": "Two devices",
    "edition": null,
    "fingerprint": "sha256:00"
  },
  "inputs": [
    {
      "path": "bench.json",
      "sha256": "00",
      "rows": null
    }
  ],
  "settings": {
    "confidence": 0.95
  },
  "rows": [
    {
      "device": "a",
      "variant": "standard",
      "pour_mL": 250,
      "total_drain_ratio": 0.30000000000000004
    }
  ],
  "findings": [
    {
      "level": "error",
      "code": "unit-unknown",
      "message": "odd unit",
      "remedy": "write one",
      "place": {
        "file": "a.csv",
        "line": 9,
        "column": null,
        "field": null,
        "cell": null
      }
    },
    {
      "level": "error",
      "code": "unit-missing",
      "message": "no unit",
      "remedy": "write one",
      "place": {
        "file": "b.csv",
        "line": 2,
        "column": null,
        "field": null,
        "cell": null
      }
    }
  ]
}
`);
  });

  it('satisfies its own schema', () => {
    const unknown = { low: null, high: null, recovery: null, pours_per_day: null };
    const rows = OUTCOME.rows.map((row) => ({ ...row, ...unknown }));
    const read: unknown = JSON.parse(envelopeText({ ...OUTCOME, rows }, '1.2.3'));
    expect(envelopeSchema('water-curve/1').safeParse(read).success).toBe(true);
  });

  it('writes minus zero as 0, and what is no number as null', () => {
    const rows = [{ a: -0, b: Number.NaN, c: Number.POSITIVE_INFINITY, d: undefined, e: [-0] }];
    const read = JSON.parse(envelopeText({ ...OUTCOME, rows }, '1')) as { rows: unknown };
    expect(read.rows).toEqual([{ a: 0, b: null, c: null, d: null, e: [0] }]);
    expect(envelopeText({ ...OUTCOME, rows }, '1')).not.toContain('-0');
  });

  it('holds null for the bench of a call without one', () => {
    const read = JSON.parse(envelopeText({ ...OUTCOME, bench: null }, '1')) as { bench: unknown };
    expect(read.bench).toBeNull();
  });

  it('carries the findings of findings/1 as its rows', () => {
    const text = envelopeText({ ...OUTCOME, schema: 'findings/1', rows: [] }, '1');
    const read = envelopeSchema('findings/1').parse(JSON.parse(text));
    expect(read.rows).toHaveLength(2);
    expect(read.rows[0]).toMatchObject({ code: 'unit-unknown' });
    expect(read.findings).toEqual([]);
  });

  it('is the same whatever the order in which findings were raised', () => {
    const turned = { ...OUTCOME, findings: [early, late] };
    expect(envelopeText(turned, '1')).toBe(envelopeText(OUTCOME, '1'));
  });
});
