import { type Finding, finding } from '../../findings/index.ts';
import { cellPlace } from '../../model/index.ts';
import type { Analyte } from '../../reference/index.ts';
import { type BottleResults, bottleResults } from './bottle-results.ts';
import { isSpoiltBy, preservativesIn, wantedPreservatives } from './preservatives.ts';
import type { SampleResults } from './sample-results.ts';
import { firstNames } from './short-number.ts';

/**
 * Logged preservatives held against what was measured in the bottle.
 *
 * A cell that names several (a kit of bottles) spoils nothing, since which went into which is not
 * logged; what no bottle of the kit keeps is still missing. A blank cell and words that are not known
 * say nothing. Bottles of one lab file with the same text share a finding.
 */
export function preservativeFindings(view: SampleResults): Finding[] {
  const groups = new Map<string, { readonly text: string; readonly bottles: BottleResults[] }>();
  for (const bottle of bottleResults(view)) {
    const text = bottle.row.values.preservative;
    if (text === null) continue;
    const key = `${bottle.row.values.lab}\t${text}`;
    const known = groups.get(key);
    if (known === undefined) groups.set(key, { text, bottles: [bottle] });
    else known.bottles.push(bottle);
  }
  return [...groups.values()].flatMap(({ text, bottles }) => judge(view, text, bottles));
}

function judge(view: SampleResults, text: string, bottles: readonly BottleResults[]): Finding[] {
  const named = preservativesIn(text);
  const [first] = bottles;
  if (first === undefined || named.length === 0) return [];
  const analytes = [
    ...new Map(
      bottles.flatMap(({ results }) =>
        results.map((index): [string, Analyte] => {
          const analyte = view.analyte(index);
          return [analyte.key, analyte];
        }),
      ),
    ).values(),
  ];
  const names = (which: readonly Analyte[]) => firstNames(which.map(({ name }) => name));
  const samples = firstNames(bottles.map(({ row }) => row.values.sample));
  const [only] = named;
  const spoilt =
    named.length === 1 && only !== undefined
      ? analytes.filter((analyte) => isSpoiltBy(analyte, only))
      : [];
  const missing = analytes.filter((analyte) => {
    const wanted = wantedPreservatives(analyte);
    return (
      wanted.length > 0 &&
      !spoilt.includes(analyte) &&
      !wanted.some((preservative) => named.includes(preservative))
    );
  });
  const place = cellPlace(first.row, 'preservative');
  const found: Finding[] = [];
  if (spoilt.length > 0) {
    found.push(
      finding(
        'preservative-spoils',
        `${names(spoilt)} of ${samples} stood in ${only}, which adds or destroys them`,
        'use a bottle without it for them; if the sample had several bottles, name them all in the cell',
        place,
      ),
    );
  }
  if (missing.length > 0) {
    const wanted = [...new Set(missing.flatMap(wantedPreservatives))];
    found.push(
      finding(
        'preservative-missing',
        `${names(missing)} of ${samples} stood without what keeps them: ${wanted.join(', ')}`,
        'ask the lab for its kit; if another bottle held it, name it in the cell too',
        place,
      ),
    );
  }
  return found;
}
