import { describe, expect, it } from 'vitest';
import { csv, withBench } from '../../tests/benches/write-bench.ts';
import { readBench } from '../commands/read-bench.ts';
import { pourFlows } from './pour-flow.ts';

const POURS = 'device,run,pour,volume,mass,time,reading,temperature';

function flows(...rows: readonly string[]) {
  return withBench({ 'pours.csv': csv(POURS, ...rows) }, (folder) => {
    const bench = readBench(folder);
    expect(bench.findings.filter((item) => item.level === 'error')).toEqual([]);
    return pourFlows(bench);
  });
}

describe('the flow of a device', () => {
  it('is all volume over all time, not the mean of flows', () => {
    const { flows: found } = flows('ro,1,1,1 L,,60 s,,', 'ro,2,1,1 L,,30 s,,');
    expect(found).toHaveLength(1);
    expect(found[0]?.flowLPerMin).toBeCloseTo(2 / 1.5, 12);
  });

  it('adds the splits of a run', () => {
    const { flows: found } = flows('ro,1,1,100 ml,,4 s,split,', 'ro,1,2,400 ml,,26 s,split,');
    expect(found[0]?.flowLPerMin).toBeCloseTo(1, 12);
  });

  it('takes the last of cumulative readings, which holds the earlier ones', () => {
    const { flows: found } = flows(
      'ro,1,1,500 ml,,30 s,cumulative,',
      'ro,1,2,1 L,,55 s,cumulative,',
    );
    expect(found[0]).toMatchObject({ volumeL: 1, timeS: 55 });
  });

  it('finds cumulative readings that fall, which are two runs under one number', () => {
    const { findings } = flows('ro,1,1,1 L,,60 s,cumulative,', 'ro,1,2,500 ml,,90 s,cumulative,');
    expect(findings.map((item) => item.code)).toEqual(['pour-reading-order']);
  });

  it('says where a mass was turned into a volume at an assumed temperature', () => {
    const { findings } = flows('ro,1,1,,500 g,30 s,,', 'ro,2,1,,500 g,30 s,,18 C');
    expect(findings.map((item) => [item.code, item.place.line])).toEqual([
      ['mass-density-assumed', 2],
    ]);
  });

  it('is absent for a device without pours', () => {
    expect(flows('ro,1,1,1 L,,60 s,,').flows.map((flow) => flow.device)).toEqual(['ro']);
  });
});
