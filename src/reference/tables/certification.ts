// biome-ignore-all format: one challenge per line
/**
 * What certification standards for household devices challenge with, and what the product may hold.
 *
 * What: contaminant, challenge in the feed, its unit, highest product, its unit, lowest reduction in
 *   percent, note (edition, detail of the test), confidence, how it was verified. Empty: not stated.
 * Unit: as printed in each row.
 * Source: the reduction-claims tables of the standards that head the lists. They are copyrighted and
 *   were not read in full: nearly every figure is from memory. Tolerances of the challenges are not
 *   listed. Protocol P231 follows the US EPA Guide Standard and Protocol for Testing Microbiological
 *   Water Purifiers (1987).
 * Verified: `from memory`, or `seen: …` with what was read. `confidence` is a judgement of the whole
 *   row: high, medium or low.
 * A reference for plausibility only, never proof that a device is certified.
 */
export type CertificationRow = readonly [
  contaminant: string,
  challenge: string,
  challengeUnit: string,
  maxProduct: string,
  productUnit: string,
  minPercent: string,
  note: string,
  confidence: 'high' | 'medium' | 'low',
  verified: string,
];

const MEMORY = 'from memory';
const SEEN_ARSENIC = 'seen: wording of the standard literature statement gives the 0.050 and 0.30 mg/L challenge levels; trade-journal column confirms two levels; product limit from memory';
const SEEN_LEAD = 'seen: two trade-press notes (Feb 2020): 150 ppb challenge, limit moved from 10 to 5 ppb, updates published December 2019';
const SEEN_NITRATE = 'seen: standard literature statement gives 27 mg/L nitrate plus 3 mg/L nitrite as N; product limit from memory';
const SEEN_CYSTS = 'seen: secondary technical note in a public repository (99.95 percent for cysts, 99 percent for asbestos under NSF/ANSI 53)';
const SEEN_PFOA = 'seen: several 2019 trade-press notes (limit of 70 ng/L combined); challenge from memory';
const SEEN_PFAS = 'seen: trade-journal columns 2023 that the total-PFAS claim was added in the 2022 edition; limit from memory';
const CLASS_SEEN = 'from memory (class size seen in the same note)';
const MEMBER_SEEN = 'from memory (compound membership seen; numbers not)';
const FIFTEEN = 'one of a list of fifteen compounds, seen in several articles';

/** Challenges by standard. */
export const CERTIFICATION_ROWS: Readonly<Record<string, readonly CertificationRow[]>> = {
  'NSF/ANSI 58': [
    ['total-dissolved-solids', '750', 'mg/L', '187', 'mg/L', '75', 'Mandatory for every POU RO system; sodium chloride challenge, 50 psi inlet, seven-day test', 'high', 'from memory (that TDS reduction is mandatory, seven days at 50 psi: seen in a trade-journal column by a certification-body author)'],
    ['arsenic-v', '0.30', 'mg/L', '0.010', 'mg/L', '', 'Pentavalent only; claim statement requires free chlorine or proof of As(V)', 'high', SEEN_ARSENIC],
    ['arsenic-v', '0.050', 'mg/L', '0.010', 'mg/L', '', 'Lower challenge level added after the 2006 MCL', 'high', SEEN_ARSENIC],
    ['barium', '10.0', 'mg/L', '2.0', 'mg/L', '', '', 'high', MEMORY],
    ['cadmium', '0.03', 'mg/L', '0.005', 'mg/L', '', '', 'high', MEMORY],
    ['chromium-6', '0.3', 'mg/L', '0.1', 'mg/L', '', '', 'high', MEMORY],
    ['chromium-3', '0.3', 'mg/L', '0.1', 'mg/L', '', '', 'high', MEMORY],
    ['copper', '3.0', 'mg/L', '1.3', 'mg/L', '', '', 'high', MEMORY],
    ['fluoride', '8.0', 'mg/L', '1.5', 'mg/L', '', '', 'high', MEMORY],
    ['selenium', '0.10', 'mg/L', '0.05', 'mg/L', '', '', 'high', MEMORY],
    ['perchlorate', '0.10', 'mg/L', '0.006', 'mg/L', '', 'Early drafts used other product limits (0.005 in 2002 press, 0.004 in some editions)', 'low', MEMORY],
    ['lead', '0.15', 'mg/L', '0.010', 'mg/L', '', 'Editions before December 2019', 'high', SEEN_LEAD],
    ['lead', '0.15', 'mg/L', '0.005', 'mg/L', '', 'Editions from December 2019 (2019/2020) onward', 'high', SEEN_LEAD],
    ['nitrate-nitrite', '30', 'mg/L as N', '10', 'mg/L as N', '', '27 nitrate plus 3 nitrite; claim valid only within a stated minimum pressure', 'high', SEEN_NITRATE],
    ['nitrite', '3.0', 'mg/L as N', '1.0', 'mg/L as N', '', 'Must be met in the same test', 'high', SEEN_NITRATE],
    ['radium-226-228', '25', 'pCi/L', '5', 'pCi/L', '', 'Barium may be used as surrogate', 'medium', MEMORY],
    ['turbidity', '11', 'NTU', '0.5', 'NTU', '', '', 'high', MEMORY],
    ['cysts', '50000', 'count/L', '', '', '99.95', 'Live Cryptosporidium oocysts or 3 um microspheres; minimum challenge 50,000 per litre', 'high', MEMORY],
    ['asbestos', '10 to 100', 'MFL', '', '', '99', 'Fibres longer than 10 um', 'high', MEMORY],
    ['pfoa-pfos-sum', '1500', 'ng/L', '70', 'ng/L', '', '2019 editions; 500 ng/L PFOA plus 1000 ng/L PFOS', 'high', SEEN_PFOA],
    ['pfas-total', '', '', '20', 'ng/L', '', '2022 editions added a total-PFAS claim with a mixed challenge; product limit to be confirmed against the current text, later editions may be tighter', 'low', SEEN_PFAS],
    ['chloroform', '0.300', 'mg/L', '0.015', 'mg/L', '95', 'VOC reduction by surrogate where the system carries a post-filter', 'medium', MEMORY],
  ],
  'NSF/ANSI 53': [
    ['lead', '0.15', 'mg/L', '0.010', 'mg/L', '', 'Editions before December 2019; run at pH 6.5 and at pH 8.5', 'high', SEEN_LEAD],
    ['lead', '0.15', 'mg/L', '0.005', 'mg/L', '', 'Editions from December 2019 (2019/2020) onward; run at pH 6.5 and at pH 8.5', 'high', SEEN_LEAD],
    ['cysts', '50000', 'count/L', '', '', '99.95', 'Live Cryptosporidium oocysts or 3 um microspheres; minimum challenge 50,000 per litre', 'high', SEEN_CYSTS],
    ['asbestos', '10 to 100', 'MFL', '', '', '99', 'Fibres longer than 10 um', 'high', SEEN_CYSTS],
    ['pfoa-pfos-sum', '1500', 'ng/L', '70', 'ng/L', '', '2019 editions; 500 ng/L PFOA plus 1000 ng/L PFOS', 'high', SEEN_PFOA],
    ['pfas-total', '', '', '20', 'ng/L', '', '2022 editions added a total-PFAS claim with a mixed challenge; product limit to be confirmed against the current text, later editions may be tighter', 'low', SEEN_PFAS],
    ['arsenic-v', '0.30', 'mg/L', '0.010', 'mg/L', '', 'Also 0.050 challenge', 'high', MEMORY],
    ['arsenic', '0.30', 'mg/L', '0.010', 'mg/L', '', 'Total arsenic claim (III plus V); also 0.050 challenge; run at two pH levels', 'medium', MEMORY],
    ['barium', '10.0', 'mg/L', '2.0', 'mg/L', '', '', 'high', MEMORY],
    ['cadmium', '0.03', 'mg/L', '0.005', 'mg/L', '', '', 'high', MEMORY],
    ['chromium-6', '0.3', 'mg/L', '0.1', 'mg/L', '', '', 'high', MEMORY],
    ['chromium-3', '0.3', 'mg/L', '0.1', 'mg/L', '', '', 'high', MEMORY],
    ['chromium', '0.3', 'mg/L', '0.1', 'mg/L', '', 'Hexavalent plus trivalent', 'medium', MEMORY],
    ['copper', '3.0', 'mg/L', '1.3', 'mg/L', '', 'Run at pH 6.5 and at pH 8.5', 'high', MEMORY],
    ['fluoride', '8.0', 'mg/L', '1.5', 'mg/L', '', '', 'high', MEMORY],
    ['mercury', '0.006', 'mg/L', '0.002', 'mg/L', '', 'Run at pH 6.5 and at pH 8.5. A secondary note claims a 0.015 challenge, judged wrong', 'high', MEMORY],
    ['selenium', '0.10', 'mg/L', '0.05', 'mg/L', '', '', 'high', MEMORY],
    ['tthm', '0.450', 'mg/L', '0.080', 'mg/L', '', 'Chloroform-dominated mix', 'high', MEMORY],
    ['mtbe', '0.015', 'mg/L', '0.005', 'mg/L', '', '', 'high', MEMORY],
    ['atrazine', '0.009', 'mg/L', '0.003', 'mg/L', '', '', 'high', MEMORY],
    ['lindane', '0.002', 'mg/L', '0.0002', 'mg/L', '', '', 'high', MEMORY],
    ['2-4-d', '0.210', 'mg/L', '0.070', 'mg/L', '', '', 'high', MEMORY],
    ['benzene', '0.015', 'mg/L', '0.005', 'mg/L', '', '', 'high', MEMORY],
    ['carbofuran', '0.080', 'mg/L', '0.040', 'mg/L', '', '', 'medium', MEMORY],
    ['carbon-tetrachloride', '0.015', 'mg/L', '0.005', 'mg/L', '', '', 'medium', MEMORY],
    ['chlordane', '0.040', 'mg/L', '0.002', 'mg/L', '', '', 'medium', MEMORY],
    ['endrin', '0.006', 'mg/L', '0.002', 'mg/L', '', '', 'medium', MEMORY],
    ['ethylbenzene', '2.1', 'mg/L', '0.70', 'mg/L', '', '', 'medium', MEMORY],
    ['1-2-dichlorobenzene', '1.8', 'mg/L', '0.60', 'mg/L', '', '', 'medium', MEMORY],
    ['1-4-dichlorobenzene', '0.225', 'mg/L', '0.075', 'mg/L', '', '', 'medium', MEMORY],
    ['methoxychlor', '0.120', 'mg/L', '0.040', 'mg/L', '', '', 'medium', MEMORY],
    ['pcbs', '0.010', 'mg/L', '0.0005', 'mg/L', '', '', 'medium', MEMORY],
    ['simazine', '0.012', 'mg/L', '0.004', 'mg/L', '', '', 'medium', MEMORY],
    ['styrene', '2.0', 'mg/L', '0.1', 'mg/L', '', '', 'medium', MEMORY],
    ['tetrachloroethylene', '0.015', 'mg/L', '0.005', 'mg/L', '', '', 'high', MEMORY],
    ['toluene', '3.0', 'mg/L', '1.0', 'mg/L', '', '', 'medium', MEMORY],
    ['toxaphene', '0.015', 'mg/L', '0.003', 'mg/L', '', '', 'high', MEMORY],
    ['trichloroethylene', '0.300', 'mg/L', '0.005', 'mg/L', '', '', 'medium', MEMORY],
    ['2-4-5-tp', '0.150', 'mg/L', '0.050', 'mg/L', '', '', 'medium', MEMORY],
    ['nitrate-nitrite', '30', 'mg/L as N', '10', 'mg/L as N', '', '27 nitrate plus 3 nitrite', 'high', MEMORY],
    ['chloroform', '0.300', 'mg/L', '0.015', 'mg/L', '95', 'Surrogate for the VOC reduction claim covering about fifty organics', 'medium', 'seen: secondary technical note in a public repository (300 to 15 ug/L, 95 percent)'],
    ['turbidity', '11', 'NTU', '0.5', 'NTU', '', '', 'high', MEMORY],
    ['microcystins-total', '4.0', 'ug/L', '0.3', 'ug/L', '', 'Added about 2017', 'medium', MEMORY],
    ['radon', '4000', 'pCi/L', '300', 'pCi/L', '', '', 'medium', MEMORY],
    ['perchlorate', '0.10', 'mg/L', '0.006', 'mg/L', '', 'Product limit differs by edition', 'low', MEMORY],
  ],
  'NSF/ANSI 42': [
    ['chlorine-free', '2.0', 'mg/L', '', '', '50', 'Free available chlorine; averaged over life', 'high', MEMORY],
    ['chloramines', '3.0', 'mg/L', '0.5', 'mg/L', '', 'Monochloramine challenge', 'high', MEMORY],
    ['hydrogen-sulfide', '1.0', 'mg/L', '0.05', 'mg/L', '', '', 'medium', MEMORY],
    ['iron', '3 to 5', 'mg/L', '0.3', 'mg/L', '', '', 'medium', MEMORY],
    ['manganese', '1.0', 'mg/L', '0.05', 'mg/L', '', 'Aesthetic claim only', 'medium', MEMORY],
    ['zinc', '10', 'mg/L', '5.0', 'mg/L', '', '', 'medium', MEMORY],
    ['particles', '10000', 'particles/mL', '', '', '85', 'Nominal particulate class I, 0.5 to <1 um', 'high', 'seen: secondary technical note in a public repository (class sizes; 85 percent for class I)'],
    ['particles', '10000', 'particles/mL', '', '', '85', 'Nominal particulate class II, 1 to <5 um; percent for classes II to VI from memory', 'medium', CLASS_SEEN],
    ['particles', '10000', 'particles/mL', '', '', '85', 'Nominal particulate class III, 5 to <15 um; percent for classes II to VI from memory', 'medium', CLASS_SEEN],
    ['particles', '10000', 'particles/mL', '', '', '85', 'Nominal particulate class IV, 15 to <30 um; percent for classes II to VI from memory', 'medium', CLASS_SEEN],
    ['particles', '10000', 'particles/mL', '', '', '85', 'Nominal particulate class V, 30 to <50 um; percent for classes II to VI from memory', 'medium', CLASS_SEEN],
    ['particles', '10000', 'particles/mL', '', '', '85', 'Nominal particulate class VI, 50 um and above; percent for classes II to VI from memory', 'medium', CLASS_SEEN],
  ],
  'NSF/ANSI 401': [
    ['atenolol', '200', 'ng/L', '30', 'ng/L', '', FIFTEEN, 'high', 'seen: trade-blog explanation of the 200 to 30 ng/L rule'],
    ['carbamazepine', '1400', 'ng/L', '200', 'ng/L', '', FIFTEEN, 'high', MEMBER_SEEN],
    ['deet', '1400', 'ng/L', '200', 'ng/L', '', FIFTEEN, 'high', MEMBER_SEEN],
    ['estrone', '140', 'ng/L', '20', 'ng/L', '', FIFTEEN, 'high', MEMBER_SEEN],
    ['ibuprofen', '400', 'ng/L', '60', 'ng/L', '', FIFTEEN, 'high', MEMBER_SEEN],
    ['linuron', '140', 'ng/L', '20', 'ng/L', '', FIFTEEN, 'high', MEMBER_SEEN],
    ['meprobamate', '400', 'ng/L', '60', 'ng/L', '', FIFTEEN, 'high', MEMBER_SEEN],
    ['metolachlor', '1400', 'ng/L', '200', 'ng/L', '', FIFTEEN, 'high', MEMBER_SEEN],
    ['naproxen', '140', 'ng/L', '20', 'ng/L', '', FIFTEEN, 'high', MEMBER_SEEN],
    ['nonylphenol', '1400', 'ng/L', '200', 'ng/L', '', FIFTEEN, 'high', MEMBER_SEEN],
    ['phenytoin', '200', 'ng/L', '30', 'ng/L', '', FIFTEEN, 'high', MEMBER_SEEN],
    ['tcep', '5000', 'ng/L', '700', 'ng/L', '', FIFTEEN, 'high', MEMBER_SEEN],
    ['tcpp', '5000', 'ng/L', '700', 'ng/L', '', FIFTEEN, 'high', MEMBER_SEEN],
    ['trimethoprim', '140', 'ng/L', '20', 'ng/L', '', FIFTEEN, 'high', MEMBER_SEEN],
    ['bisphenol-a', '2000', 'ng/L', '300', 'ng/L', '', FIFTEEN, 'high', MEMBER_SEEN],
    ['microplastics', '', '', '', '', '85', 'Added to later editions, 0.5 to 1 um particles', 'low', MEMORY],
  ],
  'NSF P231': [
    ['total-coliform', '10000000', 'CFU/100mL', '', '', '99.9999', 'Bacteria, six log (Raoultella terrigena challenge)', 'high', MEMORY],
    ['enteric-viruses', '10000000', 'PFU/L', '', '', '99.99', 'Viruses, four log', 'high', MEMORY],
    ['cysts', '1000000', 'count/L', '', '', '99.9', 'Cysts, three log', 'high', MEMORY],
  ],
};

/** Standards without reduction limits of their own, and what they add. */
export const STANDARDS_WITHOUT_CHALLENGE: Readonly<Record<string, { readonly note: string; readonly verified: string }>> = {
  'ASSE 1086': { note: 'Adds minimum water efficiency and a membrane-life test to RO systems; contaminant reduction stays under NSF/ANSI 58. No reduction limits of its own', verified: 'seen: ANSI webstore abstract and ASSE articles' },
  'ASSE 1087': { note: 'Commercial and food-service equipment: flow, pressure, structural and backflow tests; residential treatment excluded, so no household claims rest on it', verified: 'seen: ASSE 1087-2018 announcements in trade press' },
};
