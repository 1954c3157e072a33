import { BenchError, type Finding, type FindingCode, finding, place } from '../findings/index.ts';
import type { LabResult } from '../model/index.ts';
import {
  type Analyte,
  type AnalyteIndex,
  applyLinear,
  conversionTo,
  readUnit,
  type Unit,
} from '../reference/index.ts';
import { readDecimal } from './decimal.ts';
import { judgeResult } from './judge-result.ts';
import { detectLayout, type LabLayout } from './lab-layout.ts';
import type { LabRole } from './lab-roles.ts';
import type { ResultTableBuilder } from './result-table-builder.ts';

/** Gives every record of a lab file in turn; the first is the header. */
export type RecordSource = (onRecord: (cells: readonly string[], line: number) => void) => void;

export interface LabFileContext {
  readonly path: string;
  readonly stem: string;
  readonly analytes: AnalyteIndex;
  /** The sample of a row, by the lab's number and the client's name; -1 where it is unknown. */
  readonly sampleOf: (labSample: string, clientSample: string) => number;
}

/** A row whose cells were understood, in canonical units. */
type RowReading =
  | { readonly kind: 'result'; readonly analyte: number; readonly result: number }
  | { readonly kind: 'left-out'; readonly reason: string }
  | { readonly kind: 'problem' };

/**
 * Reads one lab file into the table of results.
 *
 * Rows with the same texts share one parsed result, so that the cost of a row is a look-up. A
 * problem is reported once for each distinct text, at the first row that holds it.
 * @returns the findings of the file
 */
export function readLabFile(
  records: RecordSource,
  context: LabFileContext,
  builder: ResultTableBuilder,
): Finding[] {
  return new LabFileReader(context, builder).read(records);
}

/** Units of the bench, whose letters (J, F, L) a lab uses as qualifiers and never for a result. */
const BENCH_DIMENSIONS: ReadonlySet<string> = new Set([
  'volume',
  'mass',
  'time',
  'flow',
  'pressure',
  'power',
  'energy',
]);

function isLabUnit(text: string): boolean {
  const reading = readUnit(text, {});
  return reading.kind === 'unit' && !BENCH_DIMENSIONS.has(reading.unit.dimension);
}

class LabFileReader {
  readonly #context: LabFileContext;
  readonly #builder: ResultTableBuilder;
  readonly #findings: Finding[] = [];
  readonly #raised = new Set<string>();
  readonly #memo = new Map<string, RowReading>();
  readonly #leftOut = new Map<string, number>();
  readonly #seen = new Map<number, Map<number, number>>();
  #header: readonly string[] = [];
  #layout: LabLayout | null = null;
  #rowsRead = 0;
  #results = 0;

  constructor(context: LabFileContext, builder: ResultTableBuilder) {
    this.#context = context;
    this.#builder = builder;
  }

  read(records: RecordSource): Finding[] {
    let headerSeen = false;
    records((cells, line) => {
      if (!headerSeen) {
        headerSeen = true;
        this.#readHeader(cells, line);
        return;
      }
      if (cells.every((cell) => cell.trim() === '')) return;
      this.#rowsRead += 1;
      if (this.#layout !== null) this.#readRow(cells, line, this.#layout);
    });
    if (!headerSeen) {
      throw new BenchError(
        'file-empty',
        'the lab file holds no header line',
        'put the export into lab/ again, or remove the file',
        place({ file: this.#context.path }),
      );
    }
    this.#builder.addFile({
      path: this.#context.path,
      stem: this.#context.stem,
      header: this.#header,
      layout: this.#layout?.kind ?? 'not certain',
      rowsRead: this.#rowsRead,
      results: this.#results,
      leftOut: [...this.#leftOut]
        .map(([reason, count]) => ({ reason, count }))
        .sort((a, b) => (a.reason < b.reason ? -1 : 1)),
    });
    this.#reportLeftOut();
    return this.#findings;
  }

  #readHeader(cells: readonly string[], line: number): void {
    this.#header = cells.map((cell) => cell.trim());
    const repeated = this.#header.findIndex(
      (name, index) => name !== '' && this.#header.indexOf(name) < index,
    );
    if (repeated !== -1) {
      this.#findings.push(
        finding(
          'header-repeated',
          `the column "${this.#header[repeated]}" stands twice`,
          'ask the lab for an export with one column of that name',
          this.#placeOf(cells, line, repeated),
        ),
      );
      return;
    }
    const reading = detectLayout(this.#context.path, this.#header, line);
    this.#findings.push(...reading.findings);
    this.#layout = reading.layout;
  }

  #readRow(cells: readonly string[], line: number, layout: LabLayout): void {
    if (cells.length !== this.#header.length) {
      this.#findings.push(
        finding(
          'row-ragged',
          `the row has ${cells.length} fields and the header ${this.#header.length}`,
          'ask the lab for the export again; a cell may hold an unquoted delimiter',
          place({ file: this.#context.path, line }),
        ),
      );
      return;
    }
    const cell = (role: LabRole): string => {
      const index = layout.columns[role];
      return index === undefined ? '' : (cells[index] ?? '').trim();
    };
    const sample = this.#sampleOf(cell, cells, line, layout);
    if (sample === -1) return;
    const key = [
      'analyte',
      'cas',
      'result',
      'sign',
      'unit',
      'mdl',
      'rl',
      'limit',
      'qualifier',
      'basis',
    ]
      .map((role) => cell(role as LabRole))
      .join('\u0001');
    let reading = this.#memo.get(key);
    if (reading === undefined) {
      reading = this.#judgeRow(cell, cells, line, layout);
      this.#memo.set(key, reading);
    }
    if (reading.kind === 'left-out') {
      this.#leftOut.set(reading.reason, (this.#leftOut.get(reading.reason) ?? 0) + 1);
    }
    if (reading.kind !== 'result') return;
    if (this.#isRepeated(sample, reading.analyte, cells, line, layout)) return;
    this.#results += 1;
    this.#builder.add({
      line,
      field: layout.columns.result ?? 0,
      sample,
      analyte: reading.analyte,
      result: reading.result,
    });
  }

  #sampleOf(
    cell: (role: LabRole) => string,
    cells: readonly string[],
    line: number,
    layout: LabLayout,
  ): number {
    const lab = cell('labSample');
    const client = cell('clientSample');
    const sample = this.#context.sampleOf(lab, client);
    if (sample === -1) {
      const shown = lab === '' ? client : lab;
      this.#raise(
        'sample-unknown',
        shown,
        `the sample "${shown}" is in neither samples.csv nor bottles.csv`,
        "add it to samples.csv; where the lab's number differs from yours, add it to bottles.csv",
        this.#placeOf(cells, line, layout.columns.labSample ?? layout.columns.clientSample ?? 0),
      );
    }
    return sample;
  }

  #isRepeated(
    sample: number,
    analyte: number,
    cells: readonly string[],
    line: number,
    layout: LabLayout,
  ): boolean {
    const ofSample = this.#seen.get(sample) ?? new Map<number, number>();
    this.#seen.set(sample, ofSample);
    const earlier = ofSample.get(analyte);
    if (earlier === undefined) {
      ofSample.set(analyte, line);
      return false;
    }
    this.#findings.push(
      finding(
        'result-repeated',
        `this sample and analyte already have a result in line ${earlier}`,
        'ask the lab which of the two counts; a second bottle needs a sample of its own',
        this.#placeOf(cells, line, layout.columns.result ?? 0),
      ),
    );
    return true;
  }

  #judgeRow(
    cell: (role: LabRole) => string,
    cells: readonly string[],
    line: number,
    layout: LabLayout,
  ): RowReading {
    const at = (role: LabRole) =>
      this.#placeOf(cells, line, layout.columns[role] ?? layout.columns.result ?? 0);
    const resolved = this.#analyteOf(cell('analyte'), cell('cas'), at('analyte'), at('cas'));
    if (resolved === null) return { kind: 'problem' };
    const { analyte, basis: nameBasis } = resolved;
    const limits = this.#limits(cell, at);
    if (limits === null) return { kind: 'problem' };
    const judgement = judgeResult({
      result: cell('result'),
      sign: cell('sign'),
      qualifier: cell('qualifier'),
      ...limits,
      isCount: analyte.group === 'microbiological',
      isUnit: isLabUnit,
    });
    for (const item of judgement.findings) {
      this.#findings.push(finding(item.code, item.message, item.remedy, at('result')));
    }
    if (judgement.result === null) return { kind: 'problem' };
    if (judgement.result.kind === 'missing') {
      return { kind: 'left-out', reason: judgement.result.reason };
    }
    const unit = this.#unitOf(cell('unit'), judgement.cellUnit, at('unit'));
    if (unit === null) return { kind: 'problem' };
    const canonical = this.#toCanonical(
      judgement.result,
      analyte,
      unit,
      nameBasis,
      cell('basis'),
      at('unit'),
    );
    if (canonical === null) return { kind: 'problem' };
    return {
      kind: 'result',
      analyte: this.#builder.analyteIndex(analyte),
      result: this.#builder.addDistinct(canonical),
    };
  }

  #analyteOf(
    name: string,
    cas: string,
    namePlace: Finding['place'],
    casPlace: Finding['place'],
  ): { readonly analyte: Analyte; readonly basis: string | null } | null {
    const resolved = this.#context.analytes.resolve(
      name === '' ? null : name,
      cas === '' ? null : cas,
    );
    switch (resolved.kind) {
      case 'found':
        return resolved;
      case 'unknown':
        this.#raise(
          'analyte-unknown',
          `${name}|${cas}`,
          `"${name === '' ? cas : name}" is not a known analyte`,
          resolved.suggestions.length === 0
            ? 'add it to analytes.csv with its unit'
            : `did you mean ${resolved.suggestions.map((word) => `"${word}"`).join(' or ')}? ` +
                'add the spelling as an alias in analytes.csv',
          namePlace,
        );
        return null;
      case 'ambiguous':
        this.#raise(
          'analyte-ambiguous',
          `${name}|${cas}`,
          `"${name === '' ? cas : name}" could be ${resolved.candidates.map((item) => item.name).join(' or ')}`,
          'add the spelling as an alias of the right one in analytes.csv',
          namePlace,
        );
        return null;
      case 'conflict':
        this.#raise(
          'analyte-conflict',
          `${name}|${cas}`,
          `the name says ${resolved.byName.name} and the CAS number ${resolved.byCas.name}`,
          'ask the lab which of the two it measured',
          casPlace,
        );
        return null;
      default:
        return resolved satisfies never;
    }
  }

  #limits(
    cell: (role: LabRole) => string,
    at: (role: LabRole) => Finding['place'],
  ): { readonly mdl: number | null; readonly rl: number | null } | null {
    let isReadable = true;
    const read = (role: LabRole): number | null => {
      const text = cell(role).replace(/^<\s*/, '');
      if (text === '' || /^(?:-+|—|–|na|n\/a|none)$/i.test(text)) return null;
      const reading = readDecimal(text);
      if (reading.kind === 'number' && reading.value >= 0) {
        return reading.value === 0 ? null : reading.value;
      }
      isReadable = false;
      this.#raise(
        'number-unreadable',
        `${role}|${text}`,
        `the limit "${text}" is not a number`,
        'ask the lab for the export with limits as plain numbers',
        at(role),
      );
      return null;
    };
    const limit = read('limit');
    const statedMdl = read('mdl');
    const statedRl = read('rl');
    if (!isReadable) return null;
    // A limit that does not say which it is counts as the reporting limit unless that one is given.
    const mdl = statedMdl ?? (statedRl === null ? null : limit);
    const rl = statedRl ?? (limit === mdl ? null : limit);
    if (mdl !== null && rl !== null && mdl > rl) {
      this.#raise(
        'result-limit-order',
        `${mdl}|${rl}`,
        `the detection limit ${mdl} is above the reporting limit ${rl}`,
        'ask the lab whether the two columns were exchanged; the higher limit bounds both',
        at('mdl'),
      );
      return { mdl, rl: mdl };
    }
    return { mdl, rl };
  }

  #unitOf(column: string, cell: string | null, at: Finding['place']): Unit | null {
    const spelling = column === '' ? (cell ?? '') : column;
    if (spelling === '') {
      this.#raise(
        'unit-missing',
        'blank',
        'the result has no unit',
        'ask the lab for the export with units',
        at,
      );
      return null;
    }
    const reading = readUnit(spelling, {});
    if (reading.kind === 'problem') {
      const codes = {
        unknown: 'unit-unknown',
        ambiguous: 'unit-ambiguous',
        refused: 'unit-refused',
        'measures-missing': 'measures-missing',
      } as const;
      this.#raise(codes[reading.problem], spelling, reading.message, reading.remedy, at);
      return null;
    }
    if (cell !== null && column !== '') {
      const inCell = readUnit(cell, {});
      if (inCell.kind === 'unit' && inCell.unit.name !== reading.unit.name) {
        this.#raise(
          'unit-clash',
          `${cell}|${column}`,
          `the cell is in ${inCell.unit.name} and the unit column says ${reading.unit.name}`,
          'ask the lab which of the two holds',
          at,
        );
        return null;
      }
    }
    return reading.unit;
  }

  #toCanonical(
    result: LabResult,
    analyte: Analyte,
    unit: Unit,
    nameBasis: string | null,
    columnBasis: string,
    at: Finding['place'],
  ): LabResult | null {
    const stated = nameBasis ?? (columnBasis === '' ? null : columnBasis);
    const conversion = conversionTo(analyte, unit, stated);
    if (conversion.kind === 'problem') {
      const codes = {
        dimension: 'dimension-wrong',
        'basis-unstated': 'basis-unstated',
        'basis-unknown': 'basis-unknown',
        'no-molar-mass': 'dimension-wrong',
      } as const;
      this.#raise(
        codes[conversion.problem],
        `${analyte.key}|${unit.name}|${stated ?? ''}`,
        `${analyte.name}: ${conversion.message}`,
        conversion.remedy,
        at,
      );
      return null;
    }
    if (conversion.basisConverted) {
      this.#raise(
        'basis-converted',
        `${analyte.key}|${unit.name}|${stated ?? ''}`,
        `${analyte.name} was converted: ${conversion.steps.join('; ')}`,
        'none needed; the conversion is by molar mass',
        at,
      );
    }
    const index = this.#builder.addConversion({
      fromUnit: unit.spelling,
      toUnit: analyte.unit,
      steps: conversion.steps,
    });
    const convert = (value: number): number =>
      applyLinear(value, conversion.ratio, conversion.offset);
    const maybe = (value: number | null): number | null => (value === null ? null : convert(value));
    const figure = {
      ...result,
      mdl: maybe(result.mdl),
      rl: maybe(result.rl),
      stated: maybe(result.stated),
      conversion: index,
    };
    if (figure.kind === 'quantified') return { ...figure, value: convert(figure.value) };
    if (figure.kind === 'aboveRange') return { ...figure, limit: convert(figure.limit) };
    return figure;
  }

  #reportLeftOut(): void {
    if (this.#leftOut.size === 0) return;
    const reasons = [...this.#leftOut].map(([reason, count]) => `${count} ${reason}`).join(', ');
    this.#findings.push(
      finding(
        'rows-left-out',
        `of ${this.#rowsRead} rows, ${this.#results} are results; left out: ${reasons}`,
        'none needed if the reasons are right',
        place({ file: this.#context.path }),
      ),
    );
  }

  /** Raises a finding once for each distinct text. */
  #raise(
    code: FindingCode,
    subject: string,
    message: string,
    remedy: string,
    at: Finding['place'],
  ): void {
    const key = `${code}\u0001${subject}`;
    if (this.#raised.has(key)) return;
    this.#raised.add(key);
    this.#findings.push(finding(code, message, remedy, at));
  }

  #placeOf(cells: readonly string[], line: number, index: number): Finding['place'] {
    return place({
      file: this.#context.path,
      line,
      column: index + 1,
      field: this.#header[index] ?? null,
      cell: cells[index] ?? null,
    });
  }
}
