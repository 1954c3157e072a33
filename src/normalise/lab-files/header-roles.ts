// biome-ignore-all format: one role per line is easier to check
import type { LabRole } from '../../model/index.ts';

/**
 * Headers that name a role, in the spelling of `normalHeader`. Behind `|` stand words that name the
 * role only where no word before it does: a `Location` is the client's name of a sample only where
 * no `Client ID` is there.
 *
 * Source: collected from public laboratory and agency exports; `limit` is a limit that does not say
 * which of the two it is.
 */
const VOCABULARY: Readonly<Record<LabRole, string>> = {
  labSample: 'labsampleid labid labno labnumber labsample labsampleno labsamplenumber labsampno laboratoryid laboratorysampleid samplenumber sampleno sampleid sampid eeaid activityidentifier referenceprel probennummer probenummer probennr monsternummer codeprelevement numeroprelevement numerodaamostra codigodaamostra barcode bottleid kitid samplecode | sample probe amostra',
  clientSample: 'clientid clientsampleid clientsample clientsamplename clientname customersampleid customerid fieldsampleid fieldid fieldptname samplename monitoringlocationname waterpointname samplegroup probenbezeichnung entnahmestelle messstelle | samplesite sampledescription site sitename samplepoint samplingpoint samplelocation location locationname description station',
  sampleKind: 'sampletype sampletypecode qccode qctype qcname activitytypecode samplekind probenart | sampleclass qc',
  matrix: 'matrix matrixcode samplematrix activitymedianame watertype medium media',
  analyte: 'analyte analytename parameter parametername parameterdescription contaminant characteristicname determinand determinandname determinandlabel determinant compound component libmajparametre parametre parametro parameternaam chemical chemicalname substance stoff | test testname measurement property parlabel',
  cas: 'cas casno casnumber casrn casregistrynumber casparam casid casnr',
  fraction: 'resultsamplefractiontext fraction samplefraction filtered totaldissolved',
  basis: 'basis reportedas speciation methodspeciationname methodspeciation expressedas resultspeciation',
  result: 'result resultvalue finalresult reportedresult resultmeasurevalue analyticalresultvalue rqana meetwaarde parval resulttext textresult labresult measuredvalue reportedvalue ergebnis messwert resultat resultado resultaat | value concentration wert valor numeriekewaarde conc',
  sign: 'sign resultflag operator resultsign parvq remarkcode lessthan analyticalresultssign resultqualifiernotation limietsymbool resultletter resultmodifier resultprefix prefix censorcode vorzeichen signe',
  unit: 'unit units resultunit resultunits uom unitofmeasure resultmeasuremeasureunitcode cdunitereferencesiseeaux symuniteref eenheid einheit unite unidad unidade determinandunitlabel reportingunits concentrationunits analyteunits unitcode',
  qualifier: 'qualifier qualifiers qual flag flags labqualifier labqualifiers dataqualifier dataqualifiers labflag dataflag measurequalifiercode rlnote finalqualifier validationqualifier opmerkingen | remark remarks',
  condition: 'resultdetectionconditiontext detectioncondition resultdetectioncondition',
  uncertainty: 'uncertainty resultuncertainty expandeduncertainty measurementuncertainty plusminus tpu csu countingerror messunsicherheit incertitude',
  mdl: 'mdl methoddetectionlimit lod ld limitofdetection methoddetectionlevel labmdl nachweisgrenze limitededetection limitededeteccion mdc mda',
  rl: 'rl mrl pql loq lq lor eql ql rdl crdl lloq reportinglimit reportlimit reportedlimit minimumreportinglimit methodreportinglimit practicalquantitationlimit limitofquantitation limitofquantification limitofreporting quantitationlimit reportingdetectionlimit bestimmungsgrenze limitedequantification limitedequantificacao rapportagegrenswaarde',
  limit: 'detectionlimit dl limit detlimit detectionquantitationlimitmeasuremeasurevalue',
  limitType: 'detectionquantitationlimittypename limittype detectionlimittype',
  limitUnit: 'detectionquantitationlimitmeasuremeasureunitcode limitunit limitunits detectionlimitunit detectionlimitunits mdlunits rlunits',
  dilution: 'dilution dilutionfactor dilfactor df dil',
  method: 'method methodname methodid analyticalmethod analysismethod testmethod resultanalyticalmethodmethodidentifier methode verfahren analysemethode',
  collected: 'collected datecollected collectiondate collectdate sampledate sampdate samplingdate sampleddate datesampled datesamplecollected activitystartdate datetimecollected datecollectedtime collectiondatetime probenahmedatum entnahmedatum dateprel cdate datedecoleta | date datum',
  collectedTime: 'sampletime samptime collectiontime timecollected activitystarttimetime heureprel | time uhrzeit',
  timeZone: 'activitystarttimetimezonecode timezone timezonecode',
  received: 'received datereceived receiveddate receiptdate',
  analysed: 'analyzed analysed dateanalyzed dateanalysed analysisdate analysisstartdate datesampleanalyzed',
  reported: 'reported reportdate datereported dateresultsreceived issued dateissued',
};

/** Columns derived from the result text: a zero there stands for every `<x`, so none is ever read. */
const TWINS: ReadonlySet<string> = new Set(
  'valtraduite numericresult resultnumeric numericvalue resultnum resultvalnum calculatedresult valuenumeric resultasnumber'.split(' '),
);

interface Word {
  readonly role: LabRole;
  readonly isWeak: boolean;
}

const ROLE_OF: ReadonlyMap<string, Word> = new Map(
  (Object.entries(VOCABULARY) as [LabRole, string][]).flatMap(([role, words]) =>
    words.split(' | ').flatMap((part, index) =>
      part.split(' ').map((word): [string, Word] => [word, { role, isWeak: index > 0 }]),
    ),
  ),
);

/** Lower case, accents dropped, letters and digits only. */
export function normalHeader(header: string): string {
  return header.normalize('NFKD').toLowerCase().replace(/[^a-z0-9]+/g, '');
}

/** The role a header names, and how surely; null when it names none. A unit in brackets is set aside. */
export function roleWord(header: string): Word | null {
  const whole = ROLE_OF.get(normalHeader(header));
  return whole ?? ROLE_OF.get(normalHeader(header.replace(/[([].*$/, ''))) ?? null;
}

export function isNumericTwin(header: string): boolean {
  return TWINS.has(normalHeader(header));
}

export const ROLE_WORDS: Readonly<Record<LabRole, string>> = {
  labSample: 'sample number', clientSample: 'name of the sample', sampleKind: 'kind of sample', matrix: 'matrix',
  analyte: 'analyte', cas: 'CAS number', fraction: 'fraction', basis: 'basis', result: 'result', sign: 'sign', unit: 'unit',
  qualifier: 'qualifier', condition: 'detection condition', uncertainty: 'uncertainty', mdl: 'detection limit', rl: 'reporting limit',
  limit: 'limit', limitType: 'type of the limit', limitUnit: 'unit of the limit', dilution: 'dilution', method: 'method',
  collected: 'date of sampling', collectedTime: 'time of sampling', timeZone: 'time zone', received: 'date of receipt',
  analysed: 'date of analysis', reported: 'date of the report',
};

/** Headers to name where a role is missing. */
export const EXAMPLES: Readonly<Partial<Record<LabRole, string>>> = {
  labSample: 'Sample ID', clientSample: 'Client ID', analyte: 'Analyte', cas: 'CAS Number', result: 'Result', unit: 'Units',
};
