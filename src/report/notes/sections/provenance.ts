import { atLeast, type Finding, placeText, sortFindings } from '../../../findings/index.ts';
import type { Outcome } from '../../outcome.ts';
import { heldOutcomes } from '../notes-files.ts';
import type { NotesInput } from '../notes-input.ts';
import {
  blocks,
  bullets,
  count,
  counted,
  joined,
  markup,
  NOTHING,
  type Piece,
  quoted,
  say,
} from '../piece.ts';
import { left, right, tablePiece } from '../table.ts';

/** Tool, fingerprint, inputs and settings. */
export function provenanceSection(input: NotesInput): Piece {
  const { bench, version } = input;
  return blocks([
    markup('## Provenance'),
    bullets([
      say`Tool: pourbench ${version}`,
      say`Bench fingerprint: ${bench.fingerprint}`,
      ...settings(input.outcomes).map(([name, text]) => say`${name}: ${text}`),
    ]),
    tablePiece({
      caption: say`Input files: ${count('inputs', bench.inputs.length)}, each with the SHA-256 of its bytes`,
      columns: [left('File'), right('Rows'), left(markup('SHA-256'))],
      rows: bench.inputs.map(({ path, rows, sha256 }) => [
        quoted(path),
        rows === null ? NOTHING : count(`rows.${path}`, rows),
        quoted(sha256),
      ]),
    }),
  ]);
}

/** Every setting in force, as texts; the JSON files hold them as they are. */
function settings(outcomes: NotesInput['outcomes']): [string, string][] {
  const { compare, waterCurve, breakEven } = outcomes;
  const held = heldOutcomes(outcomes).filter((outcome) => outcome !== outcomes.check);
  // Commands share most settings; where one name means two things, the JSON files tell them apart.
  const all: Record<string, unknown> = Object.assign(
    {},
    ...held.map(({ settings: own }) => own),
    breakEven.settings,
    waterCurve.settings,
    compare.settings,
  );
  return Object.entries(all).map(([name, value]) => [
    name.replaceAll('_', ' '),
    typeof value === 'string' ? value : JSON.stringify(value),
  ]);
}

/** How many findings are listed; all of them stand in the data. */
const LISTED = 60;

/** Warnings and notes about the data. */
export function findingsSection(outcomes: readonly Outcome[]): Piece {
  const all = distinct(outcomes.flatMap(({ findings }) => findings));
  const heading = markup('## Findings about the data');
  if (all.length === 0) return blocks([heading, markup('None.')]);
  const ordered = [
    ...sortFindings(all.filter(({ level }) => atLeast(level, 'warning'))),
    ...sortFindings(all.filter(({ level }) => !atLeast(level, 'warning'))),
  ];
  const levels = (['error', 'warning', 'note'] as const).flatMap((level) => {
    const n = all.filter((each) => each.level === level).length;
    return n === 0 ? [] : counted(`findings.${level}`, n, level);
  });
  const shown = ordered.slice(0, LISTED);
  return blocks([
    heading,
    tablePiece({
      caption: say`${joined(levels, ', ')}${shown.length === all.length ? NOTHING : say`; ${count('findings.shown', shown.length)} shown`}`,
      columns: ['Place', 'Level', 'Code', 'What was found', 'Remedy'].map(left),
      rows: shown.map((each) => [
        quoted(placeText(each.place)),
        markup(each.level),
        markup(each.code),
        quoted(each.message),
        quoted(each.remedy),
      ]),
    }),
  ]);
}

function distinct(findings: readonly Finding[]): Finding[] {
  return [
    ...new Map(
      findings.map((each) => [JSON.stringify([each.code, each.message, each.place]), each]),
    ).values(),
  ];
}
