import { describe, expect, it } from 'vitest';
import type { UnitContext } from './read-unit.ts';
import { readUnit, unitNamed } from './read-unit.ts';

/** `ug/L as N` for a unit that was read, the kind of problem otherwise. */
function read(spelling: string, context: UnitContext = {}): string {
  const reading = readUnit(spelling, context);
  if (reading.kind === 'problem') return reading.problem;
  const { name, basis } = reading.unit;
  return basis === null ? name : `${name} ${basis}`;
}

describe('reading the spelling of a unit', () => {
  it('takes micro sign, Greek mu and u for one letter', () => {
    for (const spelling of ['ug/L', 'µg/L', 'μg/L', 'mcg/L', 'ug / L', ' µg/l ']) {
      expect(read(spelling)).toBe('ug/L');
    }
  });

  it('keeps the spelling it was given', () => {
    const reading = readUnit('µg/l', {});
    expect(reading.kind === 'unit' && reading.unit.spelling).toBe('µg/l');
  });

  it('repairs a damaged micro sign where the damage proves it, and says so', () => {
    for (const spelling of ['Âµg/L', 'Î¼g/L', '&micro;g/L', '\\u00b5g/L']) {
      const reading = readUnit(spelling, {});
      expect(reading.kind === 'unit' && reading.unit.name).toBe('ug/L');
      expect(reading.kind === 'unit' && reading.unit.note).toContain('damaged');
    }
  });

  it('asks where a character is lost for good', () => {
    expect(read('?g/L')).toBe('ambiguous');
    expect(read('\uFFFDg/L')).toBe('ambiguous');
    expect(read('?S/cm')).toBe('ambiguous');
  });

  it('never takes milli for mega', () => {
    expect(read('mS/cm')).toBe('mS/cm');
    expect(read('MS/cm')).toBe('unknown');
    expect(read('mpa')).toBe('unknown');
    expect(read('MPA')).toBe('MPa');
    expect(read('MW')).toBe('unknown');
    expect(read('ML')).toBe('ambiguous');
    expect(read('MS')).toBe('unknown');
  });

  it('folds case where it cannot change the meaning', () => {
    expect(read('KPA')).toBe('kPa');
    expect(read('Minutes')).toBe('min');
    expect(read('Fl Oz', { measures: 'us' })).toBe('US fl oz');
    expect(read('S')).toBe('unknown');
    expect(read('G')).toBe('unknown');
  });

  it('reads C, F, K and quote marks only where the column proves them', () => {
    expect(read('C')).toBe('ambiguous');
    expect(read('C', { dimension: 'temperature' })).toBe('degC');
    expect(read('F', { dimension: 'temperature' })).toBe('degF');
    expect(read('K', { dimension: 'temperature' })).toBe('kelvin');
    expect(read("'", { dimension: 'time' })).toBe('min');
    expect(read('″', { dimension: 'time' })).toBe('s');
    expect(read('"', { dimension: 'volume' })).toBe('ambiguous');
  });

  it('asks about m in a column of times: it can be minutes or months', () => {
    expect(read('m', { dimension: 'time' })).toBe('ambiguous');
    expect(read('a', { dimension: 'time' })).toBe('yr');
  });

  it('asks which degree is meant where °F meets hardness and °f meets temperature', () => {
    expect(read('°F')).toBe('degF');
    expect(read('°F', { dimension: 'hardness' })).toBe('ambiguous');
    expect(read('°f')).toBe('degfH as CaCO3');
    expect(read('°f', { dimension: 'temperature' })).toBe('ambiguous');
  });

  it('asks about ppm unless a column of dissolved solids reads it as mg/L', () => {
    expect(read('ppm')).toBe('ambiguous');
    expect(read('ppm', { dimension: 'mass-concentration' })).toBe('ambiguous');
    expect(read('ppm', { ppmIsMgPerL: true })).toBe('mg/L');
    expect(read('ppm', { dimension: 'meter-tds' })).toBe('ppm');
    expect(read('ppb')).toBe('ug/L');
    expect(read('ppt')).toBe('ambiguous');
  });

  it('turns the species behind or inside a unit into its basis', () => {
    expect(read('mg/L as N')).toBe('mg/L as N');
    expect(read('mg/l asNO3')).toBe('mg/L as NO3');
    expect(read('mg NO3-N/L')).toBe('mg/L as N');
    expect(read('mg(NO3)/L')).toBe('mg/L as NO3');
    expect(read('mg/L-N')).toBe('mg/L as N');
    expect(read('µg/l Pb')).toBe('ug/L as Pb');
    expect(read('ppm CaCO3')).toBe('mg/L as CaCO3');
    expect(read('mg N/l*^*^*^')).toBe('mg/L as N');
    expect(read('mg/L Xy')).toBe('unknown');
  });

  it('reads mg/L Pt as a colour, not as a mass of platinum', () => {
    const reading = readUnit('mg/L Pt', {});
    expect(reading.kind === 'unit' && reading.unit.dimension).toBe('colour');
  });

  it('refuses solids and doses', () => {
    expect(read('ug/kg')).toBe('refused');
    expect(read('mrem/yr')).toBe('refused');
    expect(read('mrem/yr', { dimension: 'dose-rate' })).toBe('mrem/yr');
  });

  it('knows no unit in empty text, except where pH or a plain ratio is wanted', () => {
    expect(read('')).toBe('unknown');
    expect(read('  ')).toBe('unknown');
    expect(read('', { dimension: 'volume' })).toBe('unknown');
    expect(read('', { dimension: 'ph' })).toBe('pH');
    expect(read('None', { dimension: 'ph' })).toBe('pH');
    expect(read('None')).toBe('ambiguous');
  });

  it('gives every problem a remedy', () => {
    for (const spelling of ['', 'xyz', 'ppm', 'ug/kg', 'cup', '?g/L', 'oz', 'CFU', '-9999']) {
      const reading = readUnit(spelling, {});
      expect(reading.kind).toBe('problem');
      expect(reading.kind === 'problem' && reading.remedy).not.toBe('');
    }
  });
});

describe('words whose size depends on the country', () => {
  it('are asked about without measures, naming both ways out', () => {
    for (const word of ['cup', 'gal', 'gallons', 'fl oz', 'pint', 'qt', 'tbsp', 'teaspoon']) {
      const reading = readUnit(word, {});
      expect(reading.kind === 'problem' && reading.problem).toBe('measures-missing');
      expect(reading.kind === 'problem' && reading.remedy).toContain('bench.json');
      expect(reading.kind === 'problem' && reading.remedy).toContain('US ');
    }
  });

  it('follow the measures of the bench', () => {
    expect(read('gal', { measures: 'us' })).toBe('US gal');
    expect(read('gal', { measures: 'imperial' })).toBe('imp gal');
    expect(read('pint', { measures: 'imperial' })).toBe('imp pint');
    expect(read('cup', { measures: 'metric' })).toBe('metric cup');
    expect(read('tbsp', { measures: 'metric' })).toBe('metric tbsp');
  });

  it('are asked about where the measures know no one size', () => {
    expect(read('gal', { measures: 'metric' })).toBe('ambiguous');
    expect(read('fl oz', { measures: 'metric' })).toBe('ambiguous');
    expect(read('cup', { measures: 'imperial' })).toBe('ambiguous');
    expect(read('tbsp', { measures: 'imperial' })).toBe('ambiguous');
    expect(read('tsp', { measures: 'imperial' })).toBe('ambiguous');
  });

  it('need no measures where they name their country', () => {
    const spelled = {
      'US gal': 'US gal',
      'U.S. gallons': 'US gal',
      'imp gal': 'imp gal',
      'Imperial gallon': 'imp gal',
      'UK pint': 'imp pint',
      'US pint': 'US pint',
      'US tbsp': 'US tbsp',
      'US qt': 'US qt',
      'US cup': 'US cup',
      'metric cup': 'metric cup',
      'fl oz (US)': 'US fl oz',
      'gal (imp)': 'imp gal',
      'imp gal/min': 'imp gal/min',
    };
    for (const [spelling, name] of Object.entries(spelled)) expect(read(spelling)).toBe(name);
    expect(read('US gal', { measures: 'imperial' })).toBe('US gal');
    expect(read('UK cup')).toBe('ambiguous');
    expect(read('metric pint')).toBe('ambiguous');
  });

  it('are US gallons in flows, bills and grains, unless the bench is imperial', () => {
    for (const word of ['gpm', 'GPD', 'gph', 'kgal', 'grains/gal']) {
      expect(readUnit(word, {}).kind).toBe('unit');
      expect(readUnit(word, { measures: 'metric' }).kind).toBe('unit');
      expect(read(word, { measures: 'imperial' })).toBe('ambiguous');
    }
    expect(read('gpg', { measures: 'imperial' })).toBe('gpg as CaCO3');
  });
});

describe('units by their canonical name', () => {
  it('finds a unit by its ASCII name and none by another spelling', () => {
    expect(unitNamed('ug/L')?.dimension).toBe('mass-concentration');
    expect(unitNamed('MPN/100mL')?.dimension).toBe('most-probable-number');
    expect(unitNamed('1')?.dimension).toBe('ratio');
    expect(unitNamed('C')?.name).toBe('degC');
    expect(unitNamed('µg/L')).toBeUndefined();
    expect(unitNamed('')).toBeUndefined();
  });
});
