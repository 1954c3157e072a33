import { z } from 'zod';

/**
 * What a column of a lab export can hold.
 *
 * `limit` is a limit that does not say which of the two it is; `limitType` is the column that says
 * so. `condition` says in words why a result is blank.
 */
const LAB_ROLES = [
  'labSample',
  'clientSample',
  'sampleKind',
  'matrix',
  'analyte',
  'cas',
  'fraction',
  'basis',
  'result',
  'sign',
  'unit',
  'qualifier',
  'condition',
  'uncertainty',
  'mdl',
  'rl',
  'limit',
  'limitType',
  'limitUnit',
  'dilution',
  'method',
  'collected',
  'collectedTime',
  'timeZone',
  'received',
  'analysed',
  'reported',
] as const;

export type LabRole = (typeof LAB_ROLES)[number];

/** A role as a sidecar names it: `labSample` is `lab_sample` there. */
type SnakeCase<T extends string> = T extends `${infer First}${infer Rest}`
  ? First extends Lowercase<First>
    ? `${First}${SnakeCase<Rest>}`
    : `_${Lowercase<First>}${SnakeCase<Rest>}`
  : T;

export type LabRoleKey = SnakeCase<LabRole>;

export function roleOfKey(key: LabRoleKey): LabRole {
  return key.replace(/_([a-z])/g, (_, letter: string) => letter.toUpperCase()) as LabRole;
}

export function keyOfRole(role: LabRole): LabRoleKey {
  return role.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`) as LabRoleKey;
}

/** What a letter or word beside a figure does to it. */
export const LETTER_MEANINGS = [
  'below',
  'below-reporting',
  'below-detection',
  'below-estimated',
  'between',
  'estimated',
  'doubtful',
  'biased-high',
  'biased-low',
  'upper-bound',
  'above',
  'rejected',
  'not-tested',
  'note',
  'ask',
] as const;

export type LetterMeaning = (typeof LETTER_MEANINGS)[number];

export const QUALIFIER_LISTS = ['wqx', 'epa-nfg', 'usgs', 'geotracker', 'lab'] as const;

export type QualifierList = (typeof QUALIFIER_LISTS)[number];

/** A column by its header, or by its number (1 is the first) where a header repeats. */
const column = z.union([z.string().min(1), z.int().min(1)]);

const filter = z.strictObject({
  column,
  keep: z.array(z.string()).optional().describe('only rows with one of these cells are results'),
  leave_out: z.array(z.string()).optional().describe('rows with one of these cells are no results'),
  reason: z.string().min(1).optional().describe('reason under which the rows are counted'),
});

const series = z.strictObject({
  column: column.describe('column of the figures'),
  analyte: z.string().min(1).optional().describe('analytes across: what the column measures'),
  sample: z.string().min(1).optional().describe('samples across: whose figures these are'),
  unit: z.string().min(1).optional().describe('unit of the column'),
  basis: z.string().min(1).optional().describe('basis of the column, such as as N'),
  sign: column.optional().describe('column with <, > or ND for these figures'),
  qualifier: column.optional().describe('column with the letters of these figures'),
  mdl: column.optional().describe('column with their detection limit'),
  rl: column.optional().describe('column with their reporting limit'),
});

/**
 * A sidecar, `lab/NAME.layout.json`: how one lab export is read. It rules once it is there, and a
 * changed header is then an error. Unknown keys are errors.
 */
export const labLayoutSchema = z.strictObject({
  layout: z
    .enum(['long', 'analytes-across', 'samples-across', 'sample-list'])
    .describe(
      'one row per figure; one column per analyte; one column per sample; or a list that only ' +
        'leads from sample numbers to names',
    ),
  encoding: z
    .enum(['utf-8', 'utf-16le', 'utf-16be', 'windows-1252', 'macintosh'])
    .optional()
    .describe('encoding of the file; without it the bytes decide'),
  delimiter: z.enum([',', ';', '\t', '|']).describe('what stands between two fields'),
  decimal_mark: z
    .enum(['.', ','])
    .nullable()
    .describe('the decimal mark; null where the file does not prove one and nobody has said'),
  thousands_mark: z
    .enum(['none', ',', '.', ' ', "'"])
    .optional()
    .describe('the mark between thousands; without it the mark the decimal mark leaves over'),
  header_row: z.int().min(1).describe('number of the header among the records, 1 is the first'),
  units_row: z.boolean().optional().describe('whether the record behind the header holds units'),
  header: z
    .array(z.string())
    .describe('the header this layout was made for; a file with another one is refused'),
  skip_end: z.int().min(0).optional().describe('records at the end that are no results'),
  columns: z
    .partialRecord(z.enum(LAB_ROLES.map(keyOfRole)), column)
    .describe('the column of each role; what is not named is not read'),
  series: z
    .array(series)
    .optional()
    .describe('analytes or samples across: each column of figures with the columns that belong'),
  constants: z
    .partialRecord(z.enum(LAB_ROLES.map(keyOfRole)), z.string())
    .optional()
    .describe('what holds for every row and stands in no column, such as one analyte or unit'),
  rows: z.array(filter).optional().describe('which rows are results'),
  sample_from: z
    .array(column)
    .optional()
    .describe('columns that together name a sample, joined by blanks, where no column does alone'),
  samples: z
    .record(z.string(), z.string())
    .optional()
    .describe("lab's number or name of a sample to the sample of samples.csv"),
  sample_list: z
    .strictObject({
      file: z.string().min(1).describe('file in lab/ that leads from number to name'),
      number: column.describe('its column with the number this file uses'),
      name: column.describe('its column with the name samples.csv knows'),
    })
    .optional()
    .describe('a second file of the same job, joined by the sample number'),
  lone_limit: z
    .enum(['reporting', 'detection'])
    .optional()
    .describe('which limit a column is that does not say; reporting without it'),
  not_detected: z
    .enum(['reporting', 'detection', 'not-tested'])
    .optional()
    .describe('the limit behind ND and a blank result marked as not detected'),
  qualifier_list: z
    .enum(QUALIFIER_LISTS)
    .optional()
    .describe('the list that says what the letters mean'),
  letters: z
    .record(z.string(), z.enum(LETTER_MEANINGS))
    .optional()
    .describe('own meaning of letters such as J, E and B; goes before the list'),
  sentinels: z.array(z.string()).optional().describe('cells that mean no result, such as -9'),
  countable_maximum: z
    .number()
    .gt(0)
    .optional()
    .describe('what too numerous to count is above, in the unit of the column'),
  coverage_factor: z
    .number()
    .gt(0)
    .optional()
    .describe('k of the printed plus-minus: 2 for 95 %, 1.96 for a counting error at 95 %'),
  basis: z
    .record(z.string(), z.string())
    .optional()
    .describe('basis by analyte key where the lab does not say, such as nitrate: as N'),
  unit_aliases: z
    .record(z.string(), z.string())
    .optional()
    .describe('unit of this lab to the unit it means, such as ppm: mg/L'),
  date_order: z
    .enum(['day-first', 'month-first', 'year-first'])
    .nullable()
    .optional()
    .describe('order of dates; null where the file does not prove it and nobody has said'),
  time_zone: z.string().min(1).optional().describe('IANA zone of the times, for the record'),
  prefer_methods: z
    .array(z.string())
    .optional()
    .describe('methods in order of preference where two results stand for one analyte'),
  prefer_fraction: z
    .enum(['total', 'dissolved'])
    .optional()
    .describe('which of a total and a dissolved result counts; total without it'),
  questions: z
    .array(z.string())
    .optional()
    .describe('what was open when the layout was written; remove what is answered'),
});

/** A sidecar as it is written. */
export type LabLayoutFile = z.input<typeof labLayoutSchema>;
/** A sidecar as it is read. */
export type LabLayoutSettings = z.infer<typeof labLayoutSchema>;
/** A column as a sidecar names it. */
export type LayoutColumn = string | number;
