import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { COMMAND_TABLE } from '../../src/cli/command-table.ts';
import { parseCall } from '../../src/cli/parse-call.ts';
import type { Call } from '../../src/commands/command.ts';

/** A folder of its own for one test, removed by `remove`. */
export function scratchFolder(): { readonly path: string; remove(): void } {
  const folder = mkdtempSync(path.join(tmpdir(), 'notes-'));
  return { path: folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

/** Writes files by path below a folder. */
export function writeFiles(folder: string, files: Readonly<Record<string, string>>): void {
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(path.dirname(path.join(folder, name)), { recursive: true });
    writeFileSync(path.join(folder, name), text);
  }
}

export const VERSION = '9.8.7';

/** A call as the command line makes it, with some options set. */
export function callOf(args: readonly string[], options: Partial<Call['options']> = {}): Call {
  const defaults = parseCall(['check', 'a-bench'], COMMAND_TABLE).options;
  return {
    args,
    options: { ...defaults, ...options },
    io: { progress: async () => {} },
    version: VERSION,
  };
}

/** A bench with devices and nothing else: everything is not tested. */
export const DEVICES_ONLY: Readonly<Record<string, string>> = {
  'bench.json': '{ "title": "Devices only" }\n',
  'devices.csv': [
    'device,form,technology,drain_line,tank',
    'one,under-sink,reverse-osmosis,yes,no',
    'two,pitcher,carbon,no,no',
    '',
  ].join('\n'),
};

const HEADER = 'Sample ID,Collected,Analyte,CAS,Sign,Value,Unit,RL,MDL';
const HOSTILE = '<script>alert(1)</script>|`x` *b* 膜';

/**
 * A bench whose names try to become markup, a formula or a further cell; with a rise, a void sample
 * with its replacement, a tank device and empty optional files.
 */
export const HOSTILE_BENCH: Readonly<Record<string, string>> = {
  'bench.json': `${JSON.stringify({
    title: `Bench ${HOSTILE} [a](javascript:b)`,
    edition: '2026-11 <b>',
    reference_levels: ['US-EPA'],
    disclosure: '=HYPERLINK("x") & <img src=x onerror=y>',
  })}\n`,
  'devices.csv': [
    'device,name,form,technology,tank,drain_line,interests,note',
    `=cmd(),${HOSTILE},under-sink,reverse-osmosis,no,yes,@sum(1),![x](y)`,
    'tänk|er,Same name,under-sink,reverse-osmosis,yes,yes,,',
    'TANK-ER,Same name,pitcher,carbon,no,no,none,',
    '',
  ].join('\n'),
  'samples.csv': [
    'sample,position,device,event,taken_at,status,reason,replaces',
    'f-1,feed,,day|1,2026-01-02T08:00,,,',
    'p-1,product,=cmd(),day|1,2026-01-02T08:20,void,"bottle <broke> | cap `loose` 42",',
    'p-2,product,=cmd(),day|1,2026-01-02T08:40,,,p-1',
    'p-3,product,TANK-ER,day|1,2026-01-02T09:00,,,',
    '',
  ].join('\n'),
  'lab/results.csv': [
    HEADER,
    'f-1,2026-01-02,Lead,7439-92-1,,12.4,ug/L,1,0.2',
    'f-1,2026-01-02,Sodium,7440-23-5,,18.0,mg/L,0.5,0.1',
    'f-1,2026-01-02,Silver,7440-22-4,<,0.2,ug/L,0.2,0.05',
    'p-1,2026-01-02,Lead,7439-92-1,,3.3,ug/L,1,0.2',
    'p-2,2026-01-02,Lead,7439-92-1,<,1,ug/L,1,0.2',
    'p-2,2026-01-02,Sodium,7440-23-5,,1.7,mg/L,0.5,0.1',
    'p-2,2026-01-02,Silver,7440-22-4,<,0.2,ug/L,0.2,0.05',
    'p-3,2026-01-02,Lead,7439-92-1,,4.0,ug/L,1,0.2',
    'p-3,2026-01-02,Sodium,7440-23-5,,41.3,mg/L,0.5,0.1',
    'p-3,2026-01-02,Silver,7440-22-4,,6.4,ug/L,0.2,0.05',
    '',
  ].join('\n'),
  'drain-runs.csv': [
    'device,run,clean,drain,collected_until',
    '=cmd(),1,2 L,1.9 L,tap-closed',
    'tänk|er,1,2 L,8.3 L,shut-off',
    '',
  ].join('\n'),
  'flush-rules.csv': [
    'device,rule,trigger,after,volume,switchable',
    '=cmd(),<i>idle</i>,idle,10 min,820 ml,yes',
    '',
  ].join('\n'),
  'scenarios.csv': [
    'scenario,weekdays,window,pours_per_day,volume_each,spread',
    '../=x|y,daily,07:00-22:00,8,250 ml,even',
    '',
  ].join('\n'),
  'claims.csv': [
    'device,claim,analyte,comparator,value,evidence',
    '=cmd(),"<u>99 %</u> of | all",lead,at-least,99 %,stated',
    '',
  ].join('\n'),
  'observations.csv': 'device,topic,text\n=cmd(),<topic>,sees | `pipes` 7\n',
  'parts.csv': 'device,part,price\n=cmd(),=part(),5 USD\n',
  'pours.csv': 'device,run,volume,time\n',
  'panel.csv': 'device,against,test,assessors,correct\n',
};
