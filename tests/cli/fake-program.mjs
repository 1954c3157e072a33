// The command line with made-up commands, so that every way a call can end can be brought about.
import { runCli } from '../../dist/cli/run-cli.js';
import { BenchError, finding, place } from '../../dist/findings/index.js';

const AT = place({ file: 'pours.csv', line: 4, column: 3, field: 'volume', cell: '250' });

const findings = {
  error: [finding('unit-missing', '"250" has no unit', 'write 250 ml', AT)],
  warning: [finding('file-unknown', 'scrap.csv is not a file of a bench', 'remove it')],
  note: [finding('interests-blank', 'interests are not stated', 'state them')],
  none: [],
  many: Array.from({ length: 30 }, (_, i) =>
    finding('file-unknown', `scrap-${i}.csv is not a file of a bench`, 'remove it'),
  ),
};
findings.mixed = [...findings.many, ...findings.error];

const result = (parts) => ({ outcome: null, findings: [], written: [], end: 'done', ...parts });

const outcome = (rows, told, schema = 'lookup/1') => ({
  schema,
  bench: null,
  inputs: [{ path: 'input.csv', sha256: '0', rows: 1 }],
  settings: {},
  rows,
  findings: told,
  views: [
    {
      caption: 'One made-up row',
      columns: [{ head: 'Analyte', align: 'left' }],
      rows: [['lead']],
      legend: [],
    },
  ],
});

const runs = {
  data: ({ args }) => {
    const told = findings[args[0]] ?? [];
    return result({ outcome: outcome([{ analyte: 'lead' }], told), findings: told });
  },
  check: ({ args }) => {
    const told = findings[args[0]] ?? [];
    return result({ outcome: outcome(told, told, 'findings/1'), findings: told });
  },
  big: ({ args }) => {
    const rows = Array.from({ length: Number(args[0]) }, (_, i) => ({ analyte: `row-${i}` }));
    return result({ outcome: outcome(rows, []) });
  },
  fail: ({ args }) => {
    if (args[0] === 'bench') throw new BenchError('file-missing', 'it is gone', 'put it back', AT);
    if (args[0] === 'findings') {
      const error = new BenchError('file-missing', 'it is gone', 'put it back', AT);
      throw Object.assign(error, { findings: [...findings.error, ...findings.warning] });
    }
    throw new TypeError('x is not\na function');
  },
  stray: () => {
    setImmediate(() => {
      throw new Error('nobody waits for this');
    });
    return new Promise((resolve) => {
      setTimeout(() => resolve(result({})), 5000);
    });
  },
  moved: () => result({ outcome: outcome([], []), end: 'moved' }),
  write: () => result({ written: ['notes/index.md'] }),
  slow: async ({ io }) => {
    process.stderr.write('started\n');
    const end = Date.now() + 20_000;
    while (Date.now() < end) await io.progress('waiting');
    return result({});
  },
  echo: ({ args, options }) => result({ outcome: outcome([{ args, options }], []) }),
};

const table = Object.entries(runs).map(([name, run]) => ({
  name,
  args: [{ name: 'what', about: 'what happens' }],
  summary: 'made up',
  options: ['device', 'curve', 'pour', 'breakEven', 'format', 'out'],
  examples: [name, name],
  load: async () => ({ run: async (call) => run(call) }),
}));

await runCli(process.argv.slice(2), table);
