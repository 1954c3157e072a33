import { describe, expect, it } from 'vitest';
import { showsProgress, tableWidth, wantsColour } from './terminal.ts';

const TERMINAL = { isTTY: true };
const PIPE = {};

describe('colour on a stream', () => {
  it('is for a terminal that can show it, when nothing else is said', () => {
    expect(wantsColour('auto', TERMINAL, {})).toBe(true);
    expect(wantsColour('auto', TERMINAL, { TERM: 'dumb' })).toBe(false);
    expect(wantsColour('auto', PIPE, {})).toBe(false);
  });

  it('follows the flag before the environment', () => {
    expect(wantsColour('always', PIPE, { NO_COLOR: '1', TERM: 'dumb' })).toBe(true);
    expect(wantsColour('never', TERMINAL, { FORCE_COLOR: '1' })).toBe(false);
  });

  it('follows a non-empty NO_COLOR before FORCE_COLOR, and FORCE_COLOR before the terminal', () => {
    expect(wantsColour('auto', TERMINAL, { NO_COLOR: '1', FORCE_COLOR: '1' })).toBe(false);
    expect(wantsColour('auto', PIPE, { NO_COLOR: '', FORCE_COLOR: '1', TERM: 'dumb' })).toBe(true);
    expect(wantsColour('auto', TERMINAL, { FORCE_COLOR: '0' })).toBe(false);
    expect(wantsColour('auto', TERMINAL, { NO_COLOR: '' })).toBe(true);
  });
});

describe('the width of a table', () => {
  it('is COLUMNS, else that of the terminal, else 100', () => {
    expect(tableWidth({ columns: 80 }, { COLUMNS: '60' })).toBe(60);
    expect(tableWidth({ columns: 80 }, {})).toBe(80);
    expect(tableWidth({}, {})).toBe(100);
  });

  it('is never taken from what is no width', () => {
    for (const told of ['', '0', '-5', 'wide', '7.5', 'NaN']) {
      expect(tableWidth({}, { COLUMNS: told })).toBe(100);
    }
    expect(tableWidth({ columns: 0 }, {})).toBe(100);
  });
});

describe('progress', () => {
  it('is shown only to a person at a terminal who did not ask for quiet', () => {
    expect(showsProgress(false, TERMINAL, {})).toBe(true);
    expect(showsProgress(false, TERMINAL, { CI: 'false' })).toBe(true);
    expect(showsProgress(true, TERMINAL, {})).toBe(false);
    expect(showsProgress(false, PIPE, {})).toBe(false);
    expect(showsProgress(false, TERMINAL, { CI: 'true' })).toBe(false);
  });
});
