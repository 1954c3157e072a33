import type { DeviceRow, PourRow } from '../../model/index.ts';
import { markdownTables } from '../markdown.ts';
import { perLitreText } from '../views/costs-view.ts';
import { idleRiseViews } from '../views/idle-rise-view.ts';
import { poursView, reductionViews } from '../views/index.ts';
import { ratio, spreadFigure } from './figures.ts';
import { idleRows } from './idle-groups.ts';
import type { NotesInput } from './notes-input.ts';
import { blocks, bullets, markup, NOTHING, type Piece, quoted, say } from './piece.ts';
import { claimRows, verdictCell } from './sections/claims.ts';
import { costRows, isCosted, money } from './sections/costs.ts';
import { deviceNames, subjectName } from './subjects.ts';
import { left, right, tablePiece } from './table.ts';
import type { WaterNotes } from './water-notes.ts';

/** The page of one device: facts, reductions, water, flow, what was seen, claims and parts. */
export function devicePage(input: NotesInput, water: WaterNotes, device: DeviceRow): Piece {
  const key = device.values.device;
  const name = deviceNames(input.bench).get(key) ?? key;
  return blocks([
    say`# ${name}`,
    say`[All notes](../index.md) of “${input.bench.settings.title}”`,
    bullets(facts(device)),
    markup('## Reductions'),
    reductions(input, key, name),
    markup('## Water to drain'),
    drain(water, device),
    markup('## Flow'),
    flow(input, key, name),
    afterPause(input, key, name),
    costs(input, key),
    observations(input, key),
    claims(input, key),
    parts(input, key),
  ]);
}

function facts({ values }: DeviceRow): Piece[] {
  const stated = (label: string, text: string | null | undefined): Piece =>
    text === null || text === undefined ? NOTHING : say`${markup(label)}: ${text}`;
  const flag = (label: string, value: 'yes' | 'no' | null): Piece =>
    value === null ? NOTHING : markup(`${label}: ${value}`);
  return [
    stated('Code in the files', values.device),
    markup(`Form: ${values.form}`),
    markup(`Technology: ${values.technology}`),
    flag('Storage tank', values.tank),
    flag('Drain line', values.drain_line),
    flag('Mineral stage', values.mineral_stage),
    flag('Ultraviolet lamp', values.uv),
    stated('Model', values.model),
    stated('Specimen', values.specimen),
    markup(`Acquired: ${values.acquired ?? 'not stated'}`),
    stated('Interests', values.interests ?? 'not stated'),
    stated('Price', values.price?.text),
    stated('Price seen on', values.price_date?.text),
    stated('Price seen at', values.price_source),
    stated('Advertised flow', values.rated_flow?.text),
    values.rated_drain_ratio === null
      ? NOTHING
      : say`Advertised drain: ${ratio('advertised', values.rated_drain_ratio)} L per litre of clean water`,
    stated('Advertised production', values.rated_production?.text),
    stated('Advertised tank volume', values.tank_volume?.text),
    stated('Warranty', values.warranty?.text),
    stated('Note', values.note),
  ];
}

function reductions(input: NotesInput, key: string, name: string): Piece {
  const own = input.reductions.filter(({ row }) => row.device === key);
  if (own.length === 0) return markup('Not tested: no product of this device was sampled.');
  const voids = [...new Set(own.flatMap(({ voidSamples }) => voidSamples))];
  const named = own.map((fact) => ({ ...fact, row: { ...fact.row, device: name } }));
  return blocks([
    voids.length === 0
      ? NOTHING
      : markup(
          'A sample of this device is void: [the notes](../index.md#void-samples-checks-and-corrections) give the reason.',
        ),
    own.some(({ row }) => row.outcome === 'measured' && row.reduction.interval_low === null)
      ? markup('A measured figure without an interval stands without its uncertainty.')
      : NOTHING,
    markup(markdownTables(reductionViews(named)).trimEnd()),
  ]);
}

function drain(water: WaterNotes, device: DeviceRow): Piece {
  if (device.values.drain_line === 'no') return markup('The device has no drain line.');
  const states = water.states.filter((state) => state.drain.device === device);
  const [state] = states;
  if (state === undefined || states.every((each) => each.drain.model === null)) {
    return markup('Not tested: no production run that counts, or a flush of unknown volume.');
  }
  return blocks([
    tablePiece({
      caption: markup('Litres to drain per litre of clean water, and litres to drain in a year'),
      columns: [
        left('State'),
        left('Use'),
        right('L per litre of clean water'),
        right('L in a year'),
      ],
      rows: states.flatMap(({ drain: own, lines }) => [
        [
          quoted(own.variant),
          markup('while producing'),
          ratio('producing', own.model?.drainRatio ?? null),
          NOTHING,
        ],
        ...lines.map(({ row }) => [
          quoted(row.variant),
          quoted(row.scenario),
          spreadFigure(row.scenario, row.total_drain_ratio, 'L/L'),
          spreadFigure(row.scenario, row.drain_L_per_year, 'L'),
        ]),
      ]),
      legend: state.drain.hasTank
        ? [
            markup(
              'Storage tank: the ratio holds for the draw size it was measured at; other draws differ.',
            ),
          ]
        : [],
    }),
  ]);
}

function flow(input: NotesInput, key: string, name: string): Piece {
  const rows = (input.outcomes.pours.rows as readonly PourRow[]).filter(
    ({ device }) => device === key,
  );
  return rows.length === 0
    ? markup('Not tested: no pour was timed.')
    : markup(
        markdownTables([
          poursView(rows.map((row) => ({ ...row, device: subjectName(name, 'standard') }))),
        ]).trimEnd(),
      );
}

/** Tested pauses, meter by meter, as the command prints them. */
function afterPause(input: NotesInput, key: string, name: string): Piece {
  const own = idleRows(input)
    .filter(({ device, what }) => device === key && what === 'pause')
    .map((row) => ({ ...row, device: name }));
  return own.length === 0
    ? NOTHING
    : blocks([
        markup('## The first water after a pause'),
        markup(markdownTables(idleRiseViews(own)).trimEnd()),
      ]);
}

/** What the device costs in each scenario, state by state. */
function costs(input: NotesInput, key: string): Piece {
  const own = costRows(input).filter(({ device, scenario }) => device === key && scenario !== null);
  const [first] = own;
  if (first === undefined || !own.some(isCosted)) return NOTHING;
  return blocks([
    markup('## Costs'),
    tablePiece({
      caption: say`All costs in ${first.currency ?? 'the currency of the prices'}, by scenario`,
      columns: [
        left('State'),
        left('Use'),
        right('A year'),
        right('A clean litre'),
        left('Not or not wholly counted'),
      ],
      rows: own.map((row) => [
        quoted(row.variant),
        quoted(row.scenario ?? ''),
        money('year', row.per_year, row),
        money('litre', row.per_litre, row, perLitreText),
        markup(row.not_counted.join(', ')),
      ]),
    }),
  ]);
}

function observations(input: NotesInput, key: string): Piece {
  const own = input.bench.tables.observations.filter(({ values }) => values.device === key);
  if (own.length === 0) return NOTHING;
  return blocks([
    markup('## Seen at the bench'),
    bullets(
      own.map(({ values }) => {
        const at = values.at === null ? NOTHING : say` (${values.at.text})`;
        return say`${values.topic}, ${markup(values.severity ?? 'note')}: ${values.text}${at}`;
      }),
    ),
  ]);
}

function claims(input: NotesInput, key: string): Piece {
  const own = claimRows(input).filter(({ device }) => device === key);
  const { claims: logged } = input.bench.tables;
  if (own.length === 0) return NOTHING;
  return blocks([
    markup('## Claims'),
    markup(
      'Word for word, as claimed about the device, each with what these measurements say of it. A test of one specimen is no certification.',
    ),
    bullets(
      own.map((row) => {
        const source = logged.find(({ line }) => line === row.place.line)?.values.source;
        const standard = row.standard === null ? NOTHING : say`, ${row.standard}`;
        const read = source == null ? NOTHING : say`, read on: ${source}`;
        return say`“${row.claim}” (evidence as the maker puts it: ${markup(row.evidence)}${standard}${read}): ${verdictCell(row)}; ${row.reason}.`;
      }),
    ),
    markup(
      'What the verdicts mean: [claims and certificates](../index.md#claims-and-certificates).',
    ),
  ]);
}

function parts(input: NotesInput, key: string): Piece {
  const own = input.bench.tables.parts.filter(({ values }) => values.device === key);
  if (own.length === 0) return NOTHING;
  return blocks([
    markup('## Replacement parts'),
    tablePiece({
      caption: markup('Parts as listed; life as stated, whichever comes first'),
      columns: [left('Part'), right('Price'), left('Lasts'), left('Capacity'), right('Count')],
      rows: own.map(({ values }) => [
        quoted(values.part),
        quoted(`${values.price.amount} ${values.price.currency}`),
        quoted(values.lasts?.text ?? ''),
        quoted(values.capacity?.text ?? ''),
        quoted(String(values.count ?? 1)),
      ]),
    }),
  ]);
}
