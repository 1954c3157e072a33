import { describe, expect, it } from 'vitest';
import {
  bullets,
  count,
  counted,
  figure,
  joined,
  listed,
  markup,
  NOTHING,
  notesRows,
  quoted,
  say,
} from './piece.ts';

describe('a piece of notes', () => {
  it('carries a row for each figure in it', () => {
    const piece = say`Reduced by at least ${figure('lead.low', 91.935, '%', '91.9 %')} by ${counted('devices', 2, 'device')}.`;
    expect(piece.markdown).toBe('Reduced by at least 91.9 % by 2 devices.');
    expect(piece.rows).toEqual([
      { key: 'lead.low', value: 91.935, unit: '%', text: '91.9 %' },
      { key: 'devices', value: 2, unit: 'count', text: '2' },
    ]);
  });

  it('quotes a plain string from the bench: escaped, with a row where it holds a digit', () => {
    expect(say`${'a|b <c>'}`).toEqual({ markdown: 'a\\|b &lt;c&gt;', rows: [] });
    expect(say`${'Device 7'}`.rows).toEqual([
      { key: 'quoted', value: null, unit: null, text: 'Device 7' },
    ]);
  });

  it('leaves out ends of a range that are not known, and figures that are not printed', () => {
    expect(figure('low', [null, 5], 'ug/L', '< 5').rows).toHaveLength(1);
    expect(figure('low', [0, 5], '%', 'no reduction shown').rows).toEqual([]);
  });

  it('says one thing and several things', () => {
    expect(counted('n', 1, 'device').markdown).toBe('1 device');
    expect(listed([]).markdown).toBe('');
    expect(listed(['a', 'b', 'c'].map(quoted)).markdown).toBe('a, b and c');
    expect(listed(['a', 'b'].map(quoted), 'or').markdown).toBe('a or b');
  });

  it('leaves no gap where a part is empty', () => {
    expect(joined([markup('a'), NOTHING, markup('b')], ' ').markdown).toBe('a b');
    expect(bullets([NOTHING, markup('a')]).markdown).toBe('- a');
    expect(bullets([]).markdown).toBe('');
  });
});

describe('rows of the notes', () => {
  it('carry the section in their name, and each figure once', () => {
    const body = say`${count('devices', 3)} ${count('devices', 3)}`;
    expect(notesRows([{ id: 'summary', body }]).map((row) => row.id)).toEqual(['summary.devices']);
  });

  it('tell two figures of one name apart', () => {
    const body = say`${count('devices', 3)} ${count('devices', 4)}`;
    expect(notesRows([{ id: 'summary', body }]).map((row) => row.id)).toEqual([
      'summary.devices',
      'summary.devices.2',
    ]);
  });
});
