import path from 'node:path';
import { describe, expect, it } from 'vitest';
import type { MineralRow, ReductionRow } from '../model/index.ts';
import { mineralFingerprints } from '../report/charts/mineral-fingerprint.ts';
import { minerals } from './minerals.ts';
import { readBench } from './read-bench.ts';
import { reductions } from './reductions.ts';

const bench = readBench(path.join(import.meta.dirname, '../../samples/fourteen-devices'));
const outcome = minerals(bench);
const rows = outcome.rows as readonly MineralRow[];

const july = rows.filter(({ event }) => event === 'july');
const find = (position: string, device: string | null, group: string, quantity: string) =>
  july.filter(
    (row) =>
      row.position === position &&
      row.device === device &&
      row.group === group &&
      row.quantity === quantity,
  );

describe('the minerals of a bench', () => {
  it('gives the feed of an event once, for all devices', () => {
    const [calcium, ...more] = find('feed', null, 'content', 'calcium');
    expect(more).toEqual([]);
    expect(calcium?.estimate).toBe(88);
  });

  it('takes the gain of a mineral stage from the water before it', () => {
    const gain = find('product', 'tankless-c', 'gain', 'calcium').find(
      ({ against }) => against === 'stage',
    );
    // 13.5 behind the stage, 2.73 before it.
    expect(gain?.estimate).toBeCloseTo(13.5 - 2.73, 10);
    expect(gain?.class).toBe('gained');
  });

  it('shows no gain of an ion whose limits overlap', () => {
    const gain = find('product', 'tankless-c', 'gain', 'fluoride').find(
      ({ against }) => against === 'stage',
    );
    expect(gain?.class).toBe('not-told');
    expect(gain?.low ?? 1).toBeLessThan(0);
    expect(gain?.high ?? -1).toBeGreaterThan(0);
  });

  it('says that dissolved solids behind a mineral stage are no rejection, and only there', () => {
    const marked = rows.filter(({ notes }) => notes.includes('not-a-measure-of-rejection'));
    expect(new Set(marked.map(({ device }) => device))).toEqual(
      new Set(['tankless-c', 'tankless-d']),
    );
    expect(outcome.findings.filter(({ code }) => code === 'solids-not-rejection')).toHaveLength(2);
  });

  it('says the same beside the reductions of dissolved solids and conductivity', () => {
    const found = reductions(bench);
    const marked = (found.rows as readonly ReductionRow[]).filter((row) =>
      row.findings.includes('solids-not-rejection'),
    );
    expect(new Set(marked.map(({ analyte }) => analyte))).toEqual(
      new Set(['total-dissolved-solids', 'conductivity']),
    );
    expect(new Set(marked.map(({ device }) => device))).toEqual(
      new Set(['tankless-c', 'tankless-d']),
    );
    expect(found.findings.filter(({ code }) => code === 'solids-not-rejection')).toHaveLength(2);
  });

  it('leaves what the stage adds out of the rejection: calcium always, magnesium of one device', () => {
    expect(find('product', 'tankless-c', 'rejection', 'calcium')).toEqual([]);
    expect(find('product', 'tankless-d', 'rejection', 'magnesium')).toEqual([]);
    expect(find('product', 'tankless-c', 'rejection', 'magnesium')).toHaveLength(1);
    const [sum] = find('product', 'tankless-d', 'rejection', 'ions-not-added');
    expect(sum?.method).toContain('added by the stage: calcium, magnesium, alkalinity');
  });

  it('brackets the rejection seen before the stage by that of single ions', () => {
    const [before] = find('stage', 'tankless-c', 'rejection', 'conductivity');
    const ions = find('product', 'tankless-c', 'rejection', 'sulfate');
    expect(before?.estimate).toBeCloseTo(1 - 41.2 / 829, 10);
    expect(ions[0]?.estimate ?? 0).toBeGreaterThan(before?.estimate ?? 1);
  });

  it('gives no index without a temperature, and says so', () => {
    const [index] = find('stage', 'tankless-c', 'index', 'langelier-index');
    expect(index).toMatchObject({ low: null, high: null, reason: 'no temperature' });
  });

  it('warns of metal parts behind a device, not of the feed', () => {
    const warned = rows.filter(({ notes }) => notes.includes('metal-parts-downstream'));
    expect(warned.length).toBeGreaterThan(0);
    expect(warned.every(({ position }) => position === 'product')).toBe(true);
  });

  it('changes no number by a filter, and keeps the feed of the event', () => {
    const some = minerals(bench, { devices: ['tankless-c'] }).rows as readonly MineralRow[];
    expect(some.some(({ position }) => position === 'feed')).toBe(true);
    for (const row of some) expect(rows).toContainEqual(row);
  });

  it('prints figures of each water in a fingerprint, feed first', async () => {
    const charts = await mineralFingerprints(july, new Map());
    expect(charts.map(({ event }) => event)).toEqual(['july']);
    const svg = charts[0]?.chart.svg ?? '';
    expect(svg).toContain('13.5');
    expect(svg.indexOf('>Feed<')).toBeLessThan(svg.indexOf('>tankless-a<'));
    expect(await mineralFingerprints([], new Map())).toEqual([]);
  });
});
