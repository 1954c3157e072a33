import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { LETTER_MEANINGS, labLayoutSchema } from '../../src/model/index.ts';
import { readLab } from '../outside-checks/lab-exports/read-lab.ts';

const text = readFileSync(new URL('../../docs/lab-layouts.md', import.meta.url), 'utf8');
const examples = [
  ...text.matchAll(/### (.+)\n[\s\S]*?<!-- results: (\d+) -->\n```csv\n([\s\S]*?)```/g),
];

describe('docs/lab-layouts.md', () => {
  it('holds a worked example of each of the seven layouts', () => {
    expect(examples.map(([, title]) => title)).toEqual([
      'Long, sign column',
      'Long, result text',
      'Long, condition column',
      'Long, result type words',
      'Wide, analytes across',
      'Wide, samples across',
      'Interleaved',
    ]);
  });

  for (const [, title = '', count, csv = ''] of examples) {
    it(`${title}: the example reads without a question`, () => {
      const reading = readLab(Buffer.from(csv), 'lab/example.csv');
      expect(reading.findings.filter(({ level }) => level !== 'note')).toEqual([]);
      expect(reading.file.results).toBe(Number(count));
    });
  }

  it('names every key of the sidecar and every meaning of a letter', () => {
    const keys = [...Object.keys(labLayoutSchema.shape), ...LETTER_MEANINGS];
    expect(keys.filter((key) => !text.includes(`\`${key}\``))).toEqual([]);
  });

  it('shows a sidecar that its schema takes', () => {
    const json = /```json\n([\s\S]*?)```/.exec(text)?.[1] ?? '';
    expect(labLayoutSchema.safeParse(JSON.parse(json)).success).toBe(true);
    expect(z.toJSONSchema(labLayoutSchema, { io: 'input' })).toMatchObject({ type: 'object' });
  });
});
