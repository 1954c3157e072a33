/** What a column of a lab export can hold. */
export type LabRole =
  | 'labSample'
  | 'clientSample'
  | 'analyte'
  | 'cas'
  | 'result'
  | 'sign'
  | 'unit'
  | 'mdl'
  | 'rl'
  | 'limit'
  | 'qualifier'
  | 'basis';

/**
 * Headers that name a role, in the spelling of `normalHeader`. Collected from public laboratory and
 * agency exports; `limit` is a limit that does not say which of the two it is.
 */
const VOCABULARY: Readonly<Record<LabRole, readonly string[]>> = {
  labSample: [
    'labsampleid',
    'labid',
    'labno',
    'labnumber',
    'labsample',
    'labsampleno',
    'labsamplenumber',
    'samplenumber',
    'sampleno',
    'sampleid',
    'sampid',
    'sample',
    'activityidentifier',
  ],
  clientSample: [
    'clientid',
    'clientsampleid',
    'clientsample',
    'clientsamplename',
    'customersampleid',
    'fieldsampleid',
    'fieldid',
    'fieldptname',
    'samplename',
    'samplesite',
    'sampledescription',
  ],
  analyte: [
    'analyte',
    'analytename',
    'parameter',
    'parametername',
    'contaminant',
    'characteristicname',
    'determinand',
    'determinant',
    'compound',
    'component',
    'test',
  ],
  cas: ['cas', 'casno', 'casnumber', 'casrn', 'casregistrynumber'],
  result: ['result', 'resultvalue', 'value', 'concentration', 'finalresult', 'reportedresult'],
  sign: ['sign', 'resultflag', 'operator', 'resultsign', 'parvq', 'remarkcode', 'lessthan'],
  unit: ['unit', 'units', 'resultunit', 'resultunits', 'uom', 'unitofmeasure'],
  mdl: ['mdl', 'methoddetectionlimit', 'lod', 'ld', 'limitofdetection', 'methoddetectionlevel'],
  rl: [
    'rl',
    'mrl',
    'pql',
    'loq',
    'lq',
    'lor',
    'reportinglimit',
    'reportlimit',
    'minimumreportinglimit',
    'methodreportinglimit',
    'practicalquantitationlimit',
    'limitofquantitation',
    'limitofquantification',
    'limitofreporting',
    'quantitationlimit',
  ],
  limit: ['detectionlimit', 'dl', 'limit', 'detlimit'],
  qualifier: ['qualifier', 'qualifiers', 'qual', 'flag', 'flags', 'labqualifier', 'dataqualifier'],
  basis: ['basis', 'reportedas', 'speciation', 'methodspeciationname', 'expressedas'],
};

const ROLE_OF: ReadonlyMap<string, LabRole> = new Map(
  (Object.entries(VOCABULARY) as [LabRole, readonly string[]][]).flatMap(([role, headers]) =>
    headers.map((header) => [header, role] as const),
  ),
);

/** Lower case, letters and digits only. */
function normalHeader(header: string): string {
  return header.toLowerCase().replace(/[^a-z0-9]+/g, '');
}

/** The role a header names; null when it names none. A unit in brackets is set aside. */
export function roleOf(header: string): LabRole | null {
  const whole = ROLE_OF.get(normalHeader(header));
  if (whole !== undefined) return whole;
  return ROLE_OF.get(normalHeader(header.replace(/[([].*$/, ''))) ?? null;
}
