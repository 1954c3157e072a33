// biome-ignore-all format: one meaning per line is easier to check against its list
import type { LetterMeaning, QualifierList } from '../../model/index.ts';

/**
 * What qualifier letters mean, by named list. Letters have no common alphabet: a list holds for the
 * file that names it and for no other.
 *
 * Source: `wqx`: domain list "Result Measure Qualifier" of the US Water Quality Exchange, all 250
 *   codes, the meaning taken from the description of each. `epa-nfg`: US EPA National Functional
 *   Guidelines for data review and the flags of its contract laboratories. `usgs`: remark codes of
 *   the USGS National Water Information System. `geotracker`: codes of California's electronic
 *   deliverable format. `lab`: flags that commercial laboratories commonly print.
 * Verified: `wqx` in tests/outside-checks/lab-exports; the other four are from memory.
 */
type Rows = readonly (readonly [LetterMeaning, string])[];

const WQX: Rows = [
  ['below', 'U K KK LT RNON'],
  ['below-detection', 'CUG DL IDL MDL'],
  ['below-reporting', '<2B BQL BRL'],
  ['between', 'J-R LTGTE RVB TR'],
  ['estimated', 'AP EST J J-1'],
  ['biased-high', 'HIB HLBL HMSD HMSR HNRO J+'],
  ['biased-low', 'J- LLBL LMSD LMSR LNRO LOB LOPR'],
  ['upper-bound', '( 2-5B AL B B3 BS BSR BT C CBG CKB CKBJ CKG CKJ D>T EMPC FFB FFT INT KCF KCX PK RMAX SBB SCA SCF SCP SCX'],
  ['above', 'E EE GT LL'],
  ['rejected', 'EC NLBL NLRO NRO R'],
  ['not-tested', 'A CAN CBC EER EFAI JCW LAC LBF NAI NRP NRR NSQ PNQ'],
  ['doubtful', 'ALK ALT AR BAC BVER C25 C40 CAJ CBL CC CDI CG CLC CNT CON CSR DE DEC ECI ESD EVA EVAD EVID F FIS FLC G GXB H H2 H3 H4 H5 HE HF HH HICC HTH HTI HVER I ICA IQCOL IS ISAC ISP ISR** ITNA ITNM LICC LLS LVER MI N NHS NPNF OA3 OS3 OUT P PB PRE Q RPDX S2 SUS TOC TT UNC V VVRR VVRR2 ZZ'],
  ['note', '$ & ) * + = AC D DI DOM DT EMCL FDB FDC FDL FEQ FFD FFS FH FL FLA FLD FLS FMD FMS FPC FPP FPR FQC FRS FS FSD FSL FSP FUB GR4 HIM HQ JCN K5 K6 L LCS LF LIS LO LQ LR LSSR M3 M4 M6F MHA MSD MSI MSR NA NFNS NN NRB NRS NW O OTHER PP PPD PQL QC QCI RA RC REX RIN RLRS RNAF RP RPO RR RV SD%EL SDROL SLB SM SS SSR SSRV T T5 TMLF UDL UDQ V1 VS ^'],
];

const EPA_NFG: Rows = [
  ['below', 'U UD UB'],
  ['below-estimated', 'UJ'],
  ['estimated', 'J'],
  ['biased-high', 'J+'],
  ['biased-low', 'J-'],
  ['doubtful', 'C H N NJ JN P X'],
  ['upper-bound', 'B EMPC'],
  ['above', 'E'],
  ['rejected', 'R UR'],
  ['note', 'D'],
];

const USGS: Rows = [
  ['below', '< U'],
  ['between', 'M'],
  ['estimated', 'E'],
  ['above', '>'],
  ['upper-bound', 'V'],
  ['doubtful', 'N S'],
  ['note', 'A'],
];

const GEOTRACKER: Rows = [
  ['below', 'U ND'],
  ['between', 'DX DN'],
  ['estimated', 'J'],
  ['upper-bound', 'B'],
  ['above', 'E'],
  ['doubtful', 'H'],
  ['note', 'D'],
];

const LAB: Rows = [
  ['below', 'U ND UD UB'],
  ['below-estimated', 'UJ'],
  ['between', 'DNQ'],
  ['estimated', 'J'],
  ['biased-high', 'J+'],
  ['biased-low', 'J-'],
  ['upper-bound', 'B'],
  ['above', 'E'],
  ['doubtful', 'H HT N P'],
  ['note', 'D Q M S *'],
  ['ask', 'R'],
];

/** Letters that mean one thing in every list, and are read where no list is named. */
const SHARED: Rows = [
  ['below', 'U UU UD UB NDU LT'],
  ['below-estimated', 'UJ'],
  ['below-detection', 'ND BDL IDL MDL DL'],
  ['below-reporting', 'BQL BRL <2B'],
  ['between', 'DNQ DX J-R LTGTE'],
  ['estimated', 'J EST'],
  ['biased-high', 'J+'],
  ['biased-low', 'J-'],
  ['upper-bound', 'EMPC 2-5B'],
  ['above', 'GT'],
  ['doubtful', 'H HT'],
  ['rejected', 'R UR'],
  ['note', 'D'],
];

const byLetter = (rows: Rows): ReadonlyMap<string, LetterMeaning> =>
  new Map(rows.flatMap(([meaning, letters]) => letters.split(' ').map((letter) => [letter, meaning] as const)));

export const LETTER_LISTS: Readonly<Record<QualifierList, ReadonlyMap<string, LetterMeaning>>> = {
  wqx: byLetter(WQX),
  'epa-nfg': byLetter(EPA_NFG),
  usgs: byLetter(USGS),
  geotracker: byLetter(GEOTRACKER),
  lab: byLetter(LAB),
};

export const SHARED_LETTERS = byLetter(SHARED);
