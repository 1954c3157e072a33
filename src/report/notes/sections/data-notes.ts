import type { SampleRow } from '../../../model/index.ts';
import { amount } from '../figures.ts';
import type { NotesInput } from '../notes-input.ts';
import {
  blocks,
  bullets,
  counted,
  listed,
  markup,
  NOTHING,
  type Piece,
  paragraph,
  quoted,
  say,
} from '../piece.ts';
import { deviceNames } from '../subjects.ts';

/** Void and replaced samples, duplicates, blanks, runs set right, accepted findings, corrections. */
export function dataNotesSection(input: NotesInput): Piece {
  const samples = input.bench.tables.samples.filter(
    ({ values }) => values.device === null || input.devices.includes(values.device),
  );
  return blocks([
    markup('## Void samples, checks and corrections'),
    voidSamples(input, samples),
    paragraph([checks(samples), cappedRuns(input)]),
    accepted(input),
    markup(
      'The bench files keep no log of corrections to an earlier edition; `pourbench check --against` lists every published number that moved.',
    ),
  ]);
}

function voidSamples(input: NotesInput, samples: readonly SampleRow[]): Piece {
  const names = deviceNames(input.bench);
  const gone = samples.filter(({ values }) => values.status === 'void');
  if (samples.length === 0) return NOTHING;
  if (gone.length === 0) return markup('No sample is void.');
  return blocks([
    say`${counted('void', gone.length, 'sample is', 'samples are')} void; the results stay in the lab files and enter no figure:`,
    bullets(
      gone.map(({ values }) => {
        const again = samples.find((other) => other.values.replaces === values.sample);
        const device = values.device === null ? null : (names.get(values.device) ?? values.device);
        const reason =
          values.reason === null ? markup('no reason is stated') : say`“${values.reason}”`;
        const of = device === null ? NOTHING : say` (${device})`;
        const by =
          again === undefined
            ? markup('; not replaced')
            : say`; replaced by ${again.values.sample}`;
        return say`${values.sample}${of}: ${reason}${by}.`;
      }),
    ),
  ]);
}

function checks(samples: readonly SampleRow[]): Piece {
  const duplicates = samples.filter(({ values }) => values.of !== null).length;
  const blanks = samples.filter(({ values }) => values.position === 'blank').length;
  if (samples.length === 0) return NOTHING;
  const parts = [
    duplicates === 0 ? markup('no duplicates') : counted('duplicates', duplicates, 'duplicate'),
    blanks === 0 ? markup('no blanks') : counted('blanks', blanks, 'blank'),
  ];
  return say`The bench holds ${listed(parts)}; neither enters a reduction.`;
}

/** Production runs that were collected until after a flush. */
function cappedRuns(input: NotesInput): Piece {
  const names = deviceNames(input.bench);
  const told = input.waterUse.drains
    .filter(({ variant }) => variant === 'standard')
    .flatMap(({ fit, device }) =>
      (fit?.runs ?? [])
        .filter(({ row }) => row.values.collected_until === 'after-flush')
        .map((run) => {
          const name = names.get(device.values.device) ?? device.values.device;
          const key = `${device.values.device}.${run.row.values.run}`;
          return run.refused === null
            ? say`run ${run.row.values.run} of ${name} (${amount(key, run.flushTakenOutL, 'L', 3)} taken out)`
            : say`run ${run.row.values.run} of ${name} (not used: ${run.refused})`;
        }),
    );
  return told.length === 0
    ? NOTHING
    : say`Collected until after a flush, whose volume was taken out of the drain: ${listed(told)}.`;
}

function accepted(input: NotesInput): Piece {
  const items = input.bench.settings.accepted_findings ?? [];
  if (items.length === 0) return NOTHING;
  return blocks([
    say`${counted('accepted', items.length, 'finding was', 'findings were')} looked at and accepted:`,
    bullets(
      items.map(
        ({ code, file, reason }) =>
          say`${code}${file === undefined ? NOTHING : say` in ${quoted(file)}`}: “${reason}”`,
      ),
    ),
  ]);
}
