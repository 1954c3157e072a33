// The documents that are made from the code. `docs.mjs` writes them, tests/docs compares them.
import { z } from 'zod';
import { COMMAND_TABLE } from '../dist/cli/command-table.js';
import { requestedHelp } from '../dist/cli/help.js';
import { FINDING_CODES } from '../dist/findings/codes.js';
import { benchSettingsSchema, envelopeSchema, FILES, SCHEMA_NAMES } from '../dist/model/index.js';
import { labLayoutSchema } from '../dist/model/lab-layout.js';

/** Text by path below docs/. */
export async function generatedDocs() {
  const docs = new Map();
  for (const name of SCHEMA_NAMES) {
    docs.set(
      `json-schema/${name.replace('/', '-')}.json`,
      json(z.toJSONSchema(envelopeSchema(name))),
    );
  }
  docs.set(
    'json-schema/bench-settings.json',
    json(z.toJSONSchema(benchSettingsSchema, { io: 'input' })),
  );
  docs.set('json-schema/lab-layout.json', json(z.toJSONSchema(labLayoutSchema, { io: 'input' })));
  docs.set('json-schema/bench-files.json', json(benchFilesSchema()));
  docs.set('findings.md', findingsPage());
  docs.set('bench-folder.md', benchFolderPage());
  docs.set('commands.md', commandsPage());
  return docs;
}

const json = (value) => `${JSON.stringify(value, null, 2)}\n`;

/** Every CSV of a bench as an object schema: all cells are texts as a person writes them. */
function benchFilesSchema() {
  const files = Object.values(FILES).map((file) => [
    file.path,
    {
      type: 'object',
      description: `one row is ${file.row}`,
      properties: Object.fromEntries(
        Object.entries(file.columns).map(([name, column]) => [name, columnSchema(column)]),
      ),
      required: Object.entries(file.columns)
        .filter(([, column]) => column.required)
        .map(([name]) => name),
      additionalProperties: false,
    },
  ]);
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'CSV files of a bench folder',
    $defs: Object.fromEntries(files),
  };
}

function columnSchema(column) {
  return {
    type: 'string',
    description: column.about,
    examples: [column.example],
    ...(column.kind.type === 'choice' ? { enum: [...column.kind.words] } : {}),
  };
}

const cell = (text) => text.replaceAll('|', '\\|');

function findingsPage() {
  const lines = [
    '# Findings',
    '',
    'Every finding has a level, a code, a message, a remedy and a place (file, line, column, header,',
    'cell). An `error` cannot be read or would mislead: no command but `check` gives data then. A',
    '`warning` needs a look; bench.json can accept one, with a reason. A `note` is worth knowing.',
    '',
    '| code | level | what it means |',
    '| --- | --- | --- |',
  ];
  for (const [code, { level, about }] of Object.entries(FINDING_CODES)) {
    lines.push(`| \`${code}\` | ${level} | ${cell(about)} |`);
  }
  return `${lines.join('\n')}\n`;
}

function benchFolderPage() {
  const lines = [
    '# The bench folder',
    '',
    'A bench is a folder: `bench.json`, CSV files, `lab/` with the lab exports as they came, and',
    '`usage/` with recorded pours. `pourbench new <folder>` writes a blank one.',
    '',
    'All files but `bench.json` and `devices.csv` are optional. What is absent is not tested, never',
    'zero. A cell holds a quantity the way people write it: `650 ml`, `1 L 250 mL`, `2 x 500 ml`,',
    '`1/2 gal`, `0:04.2`, `77 F`. A unit may stand in the header instead: `volume (ml)`. With neither,',
    'the cell is an error: no unit is guessed. Cups, gallons, fluid ounces, pints, quarts and spoons',
    'follow `measures` in bench.json. A line that starts with `#` is a comment, except in `lab/` and',
    '`usage/`. Times are local wall clock, ISO 8601, without offset.',
    '',
    '## bench.json',
    '',
    'Unknown keys are errors. Schema: `json-schema/bench-settings.json`.',
    '',
    '| key | what it sets | default |',
    '| --- | --- | --- |',
  ];
  const schema = z.toJSONSchema(benchSettingsSchema, { io: 'input' });
  for (const [name, property] of Object.entries(schema.properties)) {
    const isRequired = schema.required.includes(name);
    const fallback =
      property.default === undefined ? '' : `\`${JSON.stringify(property.default)}\``;
    const choices = property.enum === undefined ? '' : `; one of ${property.enum.join(', ')}`;
    lines.push(
      `| \`${name}\`${isRequired ? ' *' : ''} | ${cell(`${property.description ?? ''}${choices}`)} | ${fallback} |`,
    );
  }
  for (const file of Object.values(FILES)) {
    lines.push('', `## ${file.path}`, '', `One row is ${file.row}. Columns marked * are required.`);
    for (const [a, b] of file.eitherOf) lines.push('', `Fill in either \`${a}\` or \`${b}\`.`);
    lines.push('', '| column | what it holds | example |', '| --- | --- | --- |');
    for (const [name, column] of Object.entries(file.columns)) {
      const choices =
        column.kind.type === 'choice' ? `; one of ${column.kind.words.join(', ')}` : '';
      lines.push(
        `| \`${name}\`${column.required ? ' *' : ''} | ${cell(`${column.about}${choices}`)} | \`${column.example}\` |`,
      );
    }
  }
  return `${lines.join('\n')}\n`;
}

function commandsPage() {
  const block = (text) => ['```text', text.trimEnd(), '```'];
  const lines = [
    '# Commands',
    '',
    'This page is the help of the program itself.',
    '',
    ...block(requestedHelp(['--help'], COMMAND_TABLE)),
  ];
  for (const { name } of COMMAND_TABLE) {
    lines.push('', `## ${name}`, '', ...block(requestedHelp([name, '--help'], COMMAND_TABLE)));
  }
  return `${lines.join('\n')}\n`;
}
