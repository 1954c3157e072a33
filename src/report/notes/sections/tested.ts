import type { DeviceRow } from '../../../model/index.ts';
import type { NotesInput } from '../notes-input.ts';
import {
  blocks,
  count,
  counted,
  joined,
  listed,
  markup,
  NOTHING,
  type Piece,
  paragraph,
  quoted,
  say,
} from '../piece.ts';
import { deviceNames } from '../subjects.ts';
import { left, tablePiece } from '../table.ts';

/** What was tested: devices, sampling, labs, and how the devices were come by. */
export function testedSection(input: NotesInput, pages: ReadonlyMap<string, string>): Piece {
  const rows = input.bench.tables.devices.filter(({ values }) =>
    input.devices.includes(values.device),
  );
  return blocks([
    markup('## What was tested'),
    deviceTable(input, rows, pages),
    paragraph([acquisition(rows), interests(input, rows)]),
    sampling(input),
  ]);
}

function deviceTable(
  input: NotesInput,
  rows: readonly DeviceRow[],
  pages: ReadonlyMap<string, string>,
): Piece {
  const names = deviceNames(input.bench);
  return tablePiece({
    caption: say`${counted('devices', rows.length, 'device')}, one specimen of each`,
    columns: ['Device', 'Form', 'Technology', 'Tank', 'Drain line', 'Specimen', 'Acquired'].map(
      left,
    ),
    rows: rows.map(({ values }) => {
      const name = quoted(names.get(values.device) ?? values.device);
      const page = pages.get(values.device);
      return [
        page === undefined ? name : say`[${name}](${markup(`devices/${page}.md`)})`,
        markup(values.form),
        markup(`${values.technology}${values.mineral_stage === 'yes' ? ', mineral stage' : ''}`),
        markup(values.tank ?? 'not stated'),
        markup(values.drain_line),
        quoted(values.specimen ?? 'not stated'),
        markup(values.acquired ?? 'not stated'),
      ];
    }),
  });
}

/** How the devices were come by; a blank is said. */
function acquisition(rows: readonly DeviceRow[]): Piece {
  const ways = ['bought', 'lent', 'given', null] as const;
  const parts = ways
    .map((way) => ({ way, n: rows.filter(({ values }) => values.acquired === way).length }))
    .filter(({ n }) => n > 0);
  const [only] = parts;
  if (only === undefined) return NOTHING;
  if (parts.length === 1) {
    const words =
      only.way === null
        ? 'How any device was acquired is not stated.'
        : `Every device was ${only.way}.`;
    return markup(words);
  }
  const told = parts.map(({ way, n }) => {
    const verb = n === 1 ? 'was' : 'were';
    const words = way === null ? `${verb} acquired in a way not stated` : `${verb} ${way}`;
    return say`${count(`acquired.${way ?? 'blank'}`, n)} ${markup(words)}`;
  });
  return say`Of the devices, ${listed(told)}.`;
}

function interests(input: NotesInput, rows: readonly DeviceRow[]): Piece {
  const names = deviceNames(input.bench);
  const stated = rows.filter(
    ({ values }) => values.interests !== null && values.interests.toLowerCase() !== 'none',
  );
  const blank = rows.filter(({ values }) => values.interests === null);
  const told = stated.map(
    ({ values }) =>
      say`${names.get(values.device) ?? values.device}: ${quoted(values.interests ?? '')}`,
  );
  const { disclosure } = input.bench.settings;
  const parts = [
    told.length > 0
      ? say`Interests stated: ${joined(told, '; ')}.`
      : blank.length === rows.length
        ? NOTHING
        : markup('No interest in a device is stated.'),
    blank.length === 0
      ? NOTHING
      : say`Whether interests exist is not stated for ${counted('interests-blank', blank.length, 'device')}.`,
    disclosure === undefined
      ? markup('The bench holds no general disclosure.')
      : say`Disclosure of the bench: “${disclosure}”`,
  ];
  return joined(parts, ' ');
}

/** Events, in order of first appearance, with their dates, samples and labs. */
function sampling(input: NotesInput): Piece {
  const samples = input.bench.tables.samples.filter(
    ({ values }) => values.device === null || input.devices.includes(values.device),
  );
  const events = [...new Set(samples.flatMap(({ values }) => values.event ?? []))];
  if (events.length === 0) return markup('No water was sampled: reductions are not tested.');
  const labs = labsBySample(input);
  return tablePiece({
    caption: say`${counted('events', events.length, 'sampling occasion')}`,
    columns: [
      left('Occasion'),
      left('Taken'),
      left('Water'),
      { head: 'Products', align: 'right' },
      { head: 'Devices', align: 'right' },
      left('Lab files'),
    ],
    rows: events.map((event) => {
      const own = samples.filter(({ values }) => values.event === event);
      const products = own.filter(
        ({ values }) => values.position === 'product' && values.of === null,
      );
      const days = [
        ...new Set(own.flatMap(({ values }) => values.taken_at?.text.slice(0, 10) ?? [])),
      ].sort();
      const used = [...new Set(own.flatMap(({ values }) => labs.get(values.sample) ?? []))];
      const isSpiked = own.some(({ values }) => values.kind === 'spiked');
      const devices = new Set(products.flatMap(({ values }) => values.device ?? []));
      const period = [...new Set([days[0], days.at(-1)])].flatMap((day) => day ?? []);
      return [
        quoted(event),
        period.length === 0 ? markup('not stated') : listed(period.map(quoted), 'to'),
        markup(isSpiked ? 'spiked' : 'natural'),
        count(`products.${event}`, products.length),
        count(`devices.${event}`, devices.size),
        used.length === 0 ? markup('no result') : listed(used.map(quoted)),
      ];
    }),
    legend: [
      markup(
        'Products include void samples; duplicates are left out. Dates are those of sampling.',
      ),
    ],
  });
}

/** Lab files that hold a result of each sample. */
function labsBySample(input: NotesInput): Map<string, string[]> {
  const { results, tables } = input.bench;
  const found = new Map<string, Set<number>>();
  for (let index = 0; index < results.length; index += 1) {
    const sample = tables.samples[results.sample[index] ?? -1]?.values.sample;
    if (sample === undefined) continue;
    const files = found.get(sample) ?? new Set<number>();
    found.set(sample, files.add(results.file[index] ?? 0));
  }
  return new Map(
    [...found].map(([sample, files]) => [
      sample,
      [...files].sort((a, b) => a - b).map((file) => results.files[file]?.path ?? ''),
    ]),
  );
}
