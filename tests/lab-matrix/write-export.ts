/** One figure of the matrix, in plain decimals; the unit is the analyte's. */
export interface Figure {
  readonly sample: string;
  readonly analyte: string;
  readonly sign: '' | '<' | '>';
  readonly value: string;
}

export interface MatrixAnalyte {
  readonly name: string;
  readonly unit: string;
}

/** Invented: four samples of fifteen analytes. */
export const SAMPLES = ['L-501', 'L-502', 'L-503', 'L-504'] as const;

export const ANALYTES: readonly MatrixAnalyte[] = [
  { name: 'Lead', unit: 'µg/L' },
  { name: 'Copper', unit: 'µg/L' },
  { name: 'Arsenic', unit: 'µg/L' },
  { name: 'Uranium', unit: 'µg/L' },
  { name: 'Chloroform', unit: 'µg/L' },
  { name: 'Calcium', unit: 'mg/L' },
  { name: 'Magnesium', unit: 'mg/L' },
  { name: 'Sodium', unit: 'mg/L' },
  { name: 'Potassium', unit: 'mg/L' },
  { name: 'Chloride', unit: 'mg/L' },
  { name: 'Sulfate', unit: 'mg/L' },
  { name: 'Fluoride', unit: 'mg/L' },
  { name: 'Conductivity', unit: 'µS/cm' },
  { name: 'Turbidity', unit: 'NTU' },
  { name: 'E. coli', unit: 'MPN/100mL' },
];

/** Figures with three decimals (`1.234`) and four digits read wrong where the mark is guessed. */
const VALUES = ['12.4', '<0.5', '1.234', '0.125', '58', '<0.05', '302', '7.10', '1234', '0.71'];

export const FIGURES: readonly Figure[] = SAMPLES.flatMap((sample, row) =>
  ANALYTES.map(({ name }, column): Figure => {
    if (name === 'E. coli') {
      return {
        sample,
        analyte: name,
        sign: row === 0 ? '>' : '<',
        value: row === 0 ? '2419.6' : '1',
      };
    }
    const text = VALUES[(row * 7 + column * 3) % VALUES.length] ?? '';
    return {
      sample,
      analyte: name,
      sign: text.startsWith('<') ? '<' : '',
      value: text.replace('<', ''),
    };
  }),
);

export const LAYOUTS = [
  'long, sign column',
  'long, result text',
  'long, condition column',
  'long, result type words',
  'analytes across',
  'samples across',
  'interleaved',
] as const;
export type Layout = (typeof LAYOUTS)[number];

/** The records of an export in a layout, figures with decimal points. */
export function recordsOf(layout: Layout): string[][] {
  const unitOf = (analyte: string) => ANALYTES.find(({ name }) => name === analyte)?.unit ?? '';
  const text = ({ sign, value }: Figure) => `${sign}${value}`;
  switch (layout) {
    case 'long, sign column':
      return [
        ['Sample ID', 'Collected', 'Analyte', 'Sign', 'Value', 'Units'],
        ...FIGURES.map((each) => [
          each.sample,
          '2026-07-14',
          each.analyte,
          each.sign,
          each.value,
          unitOf(each.analyte),
        ]),
      ];
    case 'long, result text':
      return [
        ['Sample ID', 'Collected', 'Analyte', 'Result', 'Numeric Result', 'Units', 'Qualifier'],
        ...FIGURES.map((each) => [
          each.sample,
          '2026-07-14',
          each.analyte,
          text(each),
          each.sign === '<' ? '0' : each.value,
          unitOf(each.analyte),
          '',
        ]),
      ];
    case 'long, condition column':
      return [
        [
          'ActivityIdentifier',
          'CharacteristicName',
          'ResultDetectionConditionText',
          'ResultMeasureValue',
          'ResultMeasure/MeasureUnitCode',
          'DetectionQuantitationLimitTypeName',
          'DetectionQuantitationLimitMeasure/MeasureValue',
          'DetectionQuantitationLimitMeasure/MeasureUnitCode',
        ],
        ...FIGURES.map((each) => {
          const unit = unitOf(each.analyte);
          const head = [each.sample, each.analyte];
          if (each.sign === '<')
            return [...head, 'Not Detected', '', '', 'Reporting limit', each.value, unit];
          const condition = each.sign === '>' ? 'Present Above Quantification Limit' : '';
          return [...head, condition, each.value, unit, '', '', ''];
        }),
      ];
    case 'long, result type words':
      return [
        ['Numero da amostra', 'Parametro', 'Resultado', 'LD', 'Unidade'],
        ...FIGURES.map((each) => [
          each.sample,
          each.analyte,
          each.sign === '<' ? 'MENOR_LD' : text(each),
          each.sign === '<' ? each.value : '',
          unitOf(each.analyte),
        ]),
      ];
    case 'analytes across':
      return [
        ['Sample ID', 'Collected', ...ANALYTES.map(({ name, unit }) => `${name} (${unit})`)],
        ...SAMPLES.map((sample) => [sample, '2026-07-14', ...of(sample).map(text)]),
      ];
    case 'samples across':
      return [
        ['Analyte', 'Units', ...SAMPLES],
        ...ANALYTES.map(({ name, unit }) => [
          name,
          unit,
          ...FIGURES.filter(({ analyte }) => analyte === name).map(text),
        ]),
      ];
    case 'interleaved':
      return [
        [
          'Sample ID',
          ...ANALYTES.flatMap(({ name, unit }) => [
            `${name} (${unit})`,
            'Sign',
            `${name} within limits`,
          ]),
        ],
        ...SAMPLES.map((sample) => [
          sample,
          ...of(sample).flatMap(({ sign, value }) => [value, sign, 'Yes']),
        ]),
      ];
    default:
      return layout satisfies never;
  }
}

function of(sample: string): Figure[] {
  return FIGURES.filter((each) => each.sample === sample);
}

export type Encoding = 'utf-8' | 'utf-8 with mark' | 'utf-16le' | 'utf-16be' | 'windows-1252';
export const ENCODINGS: readonly Encoding[] = [
  'utf-8',
  'utf-8 with mark',
  'utf-16le',
  'utf-16be',
  'windows-1252',
];
export const DELIMITERS = [',', ';', '\t', '|'] as const;
export const LINE_ENDS = ['\n', '\r\n', '\r'] as const;

/** Figures with the decimal mark of the file; cells quoted where they hold the delimiter. */
export function textOf(
  records: readonly (readonly string[])[],
  delimiter: string,
  decimalMark: '.' | ',',
  lineEnd: string,
): string {
  const cellText = (cell: string): string => {
    const isFigure = /^[<>]?\d+\.\d+$/.test(cell);
    const marked = isFigure ? cell.replace('.', decimalMark) : cell;
    return marked.includes(delimiter) ? `"${marked}"` : marked;
  };
  return records.map((record) => record.map(cellText).join(delimiter)).join(lineEnd) + lineEnd;
}

export function encode(text: string, encoding: Encoding): Uint8Array {
  switch (encoding) {
    case 'utf-8':
      return Buffer.from(text, 'utf8');
    case 'utf-8 with mark':
      return Buffer.from(`\ufeff${text}`, 'utf8');
    case 'utf-16le':
      return Buffer.from(`\ufeff${text}`, 'utf16le');
    case 'utf-16be':
      return Buffer.from(`\ufeff${text}`, 'utf16le').swap16();
    case 'windows-1252':
      // Every letter of the matrix is below U+0100, where both agree.
      return Buffer.from(text, 'latin1');
    default:
      return encoding satisfies never;
  }
}
