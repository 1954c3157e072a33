/**
 * Every finding the tool can raise: its level and what it means. `docs/findings.md` is written from
 * this table. A code is `<subject>-<problem>` and is never renamed once published.
 */
interface CodeEntry {
  readonly level: 'error' | 'warning' | 'note';
  readonly about: string;
}

const error = (about: string): CodeEntry => ({ level: 'error', about });
const warning = (about: string): CodeEntry => ({ level: 'warning', about });
const note = (about: string): CodeEntry => ({ level: 'note', about });

const CODES = {
  // Files and tables
  'bench-missing': error('The folder of the bench, or its bench.json, is not there.'),
  'file-missing': error('A file the bench needs is not there.'),
  'file-unknown': warning('A file in the bench folder has a name the bench does not use.'),
  'file-unreadable': error('A file could not be opened or read.'),
  'file-empty': error('A file holds no header line.'),
  'file-binary': error('A file that should be text holds binary data.'),
  'file-encoding': note('A file is not UTF-8 and was read in another encoding.'),
  'quote-unclosed': error('A quoted cell is opened and never closed, or holds a stray quote.'),
  'row-ragged': error('A row has more or fewer fields than the header.'),
  'header-repeated': error('Two columns of one file have the same header.'),
  'header-blank': error('A column with cells has no header.'),
  'column-missing': error('A required column is not in the file.'),
  'column-unknown': error('A column has a header the catalogue does not hold.'),
  'json-broken': error('A JSON file cannot be read as JSON.'),
  'key-unknown': error('A JSON file holds a key that is not in its schema.'),
  'key-repeated': error('A JSON file holds the same key twice.'),
  'key-missing': error('A JSON file lacks a required key.'),
  'value-unexpected': error('A JSON value is not of the kind its key takes.'),
  // Cells
  'cell-missing': error('A required cell is blank.'),
  'choice-unknown': error('A cell is not one of the words its column takes.'),
  'number-unreadable': error('A cell that should hold a number does not.'),
  'number-outside': error('A number lies outside the range its column takes.'),
  'unit-missing': error('A quantity has no unit in its cell and none in the header.'),
  'unit-unknown': error('A unit is not in the table of units.'),
  'unit-ambiguous': error('A unit can mean two things; the tool asks instead of guessing.'),
  'unit-refused': error('A unit does not measure what can be used here.'),
  'unit-clash': error('The cell and the header name different units.'),
  'dimension-wrong': error('A quantity measures another dimension than its column takes.'),
  'quantity-unreadable': error('A cell that should hold a quantity cannot be read.'),
  'quantity-negative': error('A quantity that cannot be negative is.'),
  'quantity-zero': error('A quantity that must be above zero is zero.'),
  'quantity-approximate': note('A quantity is marked as approximate in its cell.'),
  'measures-missing': error(
    'A unit depends on the country and bench.json does not say which measures apply.',
  ),
  'date-unreadable': error('A cell that should hold a date or a time does not.'),
  'date-impossible': error('A date does not exist in the calendar.'),
  'currency-missing': error('An amount of money names no currency.'),
  'currency-mixed': error('Amounts in different currencies would have to be added.'),
  'window-backwards': error('A window of time ends before it starts.'),
  'key-duplicate': error('Two rows carry the same key.'),
  'either-missing': error('Of two columns that may stand for each other, neither holds a value.'),
  'either-both': error('Two columns that exclude each other both hold a value.'),
  // Cross references
  'device-unknown': error('A row names a device that is not in devices.csv.'),
  'variant-unknown': error('A row names a variant that is not in variants.csv.'),
  'rule-unknown': error('A row names a flush rule that is not in flush-rules.csv.'),
  'sample-unknown': error('A row names a sample that samples.csv and bottles.csv do not hold.'),
  'spike-event-unknown': error('spikes.csv names an event without a valid spiked feed sample.'),
  'sample-without-result': warning('A valid sample has no result in any lab file.'),
  'sample-void': note('A sample is void; its results are shown with the reason and not used.'),
  'scenario-unknown': error('A filter or row names a scenario that does not exist.'),
  'filter-unknown': error('A filter names something the bench does not hold.'),
  'tank-missing': note('A device with a storage tank has no row in tanks.csv.'),
  'rated-only': note('A device has rated figures and no measured ones.'),
  'interests-blank': note('How a device was acquired, or what interests exist, is not stated.'),
  // Analytes
  'analyte-unknown': error('A name is not an analyte of the tables or of analytes.csv.'),
  'analyte-ambiguous': error('A name can mean two analytes.'),
  'analyte-conflict': error('The name says one analyte and the CAS number another.'),
  'analyte-duplicate': error('analytes.csv gives a key or alias that another analyte has.'),
  'cas-check-digit': warning('A CAS number fails its check digit.'),
  'basis-unstated': error('A result could be on either of two bases and does not say which.'),
  'basis-unknown': error('A result names a basis its analyte does not have.'),
  'basis-converted': note('A result was converted from one basis to another by molar mass.'),
  'level-jurisdiction-unknown': error('bench.json names a jurisdiction the tables do not hold.'),
  // Lab exports
  'layout-unclear': error('The layout of a lab file is not certain.'),
  'layout-role-ambiguous': error('Two columns of a lab file could hold the same role.'),
  'layout-role-missing': error('No column of a lab file holds a role that is needed.'),
  'result-unreadable': error('A result cell cannot be read as a result.'),
  'layout-header-changed': error(
    'The header of a lab file is not the one its sidecar was made for.',
  ),
  'layout-unused': warning('A sidecar in lab/ belongs to no lab file.'),
  'layout-proposed': note('Something to know about a layout that was concluded from the file.'),
  'date-order-unclear': error('The dates of a lab file could be day first or month first.'),
  'row-shifted': error('A result cell holds a unit; the row may be shifted by a column.'),
  'result-range': warning('A result cell holds a range of several results.'),
  'result-negative': warning('A result lies below zero and was taken as not detected.'),
  'uncertainty-coverage-unknown': note('A printed plus-minus does not say what it covers.'),
  'result-repeat-resolved': note('One of two results for a sample and analyte was kept, by rule.'),
  'result-fraction': note('A result is of the dissolved fraction, or stands beside one that is.'),
  'lab-job-twice': error('Two lab files hold the same results of the same job.'),
  'unit-alias': note('A unit was read as the sidecar of the lab file says.'),
  'result-zero': warning('A lab reports zero for a chemical; it was taken as not detected.'),
  'result-limit-missing': error('A non-detect comes without any limit.'),
  'result-limit-order': warning('A limit is higher than the value it belongs to, or out of order.'),
  'result-repeated': error('Two results stand for one sample and one analyte.'),
  'result-not-used': note('A lab row holds no result and was left out.'),
  'result-qualifier-unknown': note('A result carries a qualifier whose meaning is not stated.'),
  'result-estimated': note('The lab marks a result as estimated.'),
  'result-sign-clash': error('The sign column and the result cell contradict each other.'),
  'rows-left-out': note('Rows of a lab file are not results and were left out, by reason.'),
  'decimal-unclear': error('A number could be read with either decimal mark.'),
  'tubes-impossible': error('More tubes are positive than there are, or too many to go through.'),
  'tubes-disagree': warning('The tubes of a sample do not give the number the lab prints.'),
  // Quality control of lab results
  'blank-contaminated': warning('A blank holds an analyte, and results are not clear of it.'),
  'blank-detection': note('A blank holds an analyte; every result is clear of it.'),
  'duplicate-differs': warning('A duplicate and its original differ by more than is accepted.'),
  'duplicate-unlike': warning('A duplicate and its original differ in most analytes.'),
  'duplicate-mismatch': warning('A duplicate and its original are not rows of the same water.'),
  'feed-disagrees': warning('Two feed samples of one event differ by more than is accepted.'),
  'feed-changed': note('The feed differs from that of an earlier event.'),
  'spike-dose-differs': warning('The measured spiked feed does not agree with the nominal dose.'),
  'spike-feed-missing': warning('A nominal dose has no measured feed; no reduction uses the dose.'),
  'holding-time-over': warning('A sample had stood too long before the lab received it.'),
  'holding-time-field': note('The lab measured what has to be measured beside the tap.'),
  'preservative-spoils': warning('The preservative of a bottle adds or destroys what was tested.'),
  'preservative-missing': note('A bottle held none of what keeps the analytes tested in it.'),
  'receipt-warm': warning('A bottle arrived warmer than its analytes allow.'),
  'receipt-frozen': warning('A bottle arrived frozen, or its temperature is in the wrong unit.'),
  'sampling-date-differs': warning('The lab prints another day of sampling than samples.csv.'),
  'bottle-time-backwards': warning('A bottle was received before its sample was taken.'),
  'ion-balance-off': warning('Cations and anions of a sample lie too far apart.'),
  'ion-balance-loose': note('Cations and anions of a sample do not meet the strictest limit.'),
  'nitrate-basis-suspect': warning(
    'A nitrate differs from what it should be by the factor of its bases.',
  ),
  'dissolved-solids-off': warning('Measured dissolved solids do not fit the ions.'),
  'dissolved-solids-loose': note('Measured dissolved solids are not 1.0 to 1.2 times the ions.'),
  'conductivity-off': warning('A conductivity does not fit the dissolved solids or the ions.'),
  'hardness-disagrees': warning('A hardness does not fit calcium and magnesium.'),
  'part-above-total': warning('A part is larger than the whole it belongs to.'),
  'total-below-parts': warning('A sum is smaller than its members together.'),
  'result-repeats-constant': warning('One printed figure stands for many analytes and samples.'),
  'result-equals-limit': warning(
    'The figures of an analyte equal its reporting limit again and again.',
  ),
  'sample-repeats-another': warning('All results of a sample equal those of another.'),
  'feed-product-exchanged': warning(
    'Nearly all analytes are higher in the product than in the feed.',
  ),
  'bottles-exchanged': warning('Product and drain stand on the wrong sides of the feed.'),
  'drain-balance-off': warning(
    'Feed, product and drain do not balance at the measured drain ratio.',
  ),
  'unit-suspect': warning('A figure differs from its fellows by a factor that a wrong unit makes.'),
  // Quality control of bench logs
  'pour-unlike': warning('The flow of a pour is far from that of its fellows.'),
  'drain-run-unlike': warning('The drain of a run is far from that of its fellows.'),
  'run-holds-flush': warning('The drain of a run exceeds its fellows by about one flush.'),
  'flush-counted-twice': warning('A start flush is in the measured runs and in the rules.'),
  'flush-repeated': warning('One flush stands in two rows.'),
  'flush-unlike': warning('The volume of a flush is far from that of its fellows.'),
  'temperature-implausible': warning(
    'A temperature is not one of such water in the unit it is read in.',
  ),
  'pressure-implausible': warning(
    'A pressure is not one of a household in the unit it is read in.',
  ),
  'tank-pressures-order': warning('A tank restarts at or above the pressure at which it stops.'),
  'part-life-missing': warning('A part says neither how long it lasts nor how much it treats.'),
  'currency-differs': warning('A price is in another currency than the bench.'),
  'claim-analyte-unknown': warning('A claim names what is not one analyte.'),
  // Reductions
  'feed-missing': warning('A product result has no feed result to compare with.'),
  'feed-not-positive': error('A reduction was asked for a feed that is not above zero.'),
  'level-not-comparable': note('A reference level cannot be compared with the result.'),
  'limit-above-level': warning('A reporting limit lies above the reference level.'),
  'feed-moved': note('The feed changed by more than the difference that is claimed.'),
  'rise-shown': note('A product result lies above its feed.'),
  'kind-mismatch': error('A product sample is natural and its feed spiked, or the reverse.'),
  // Another feed
  'feed-sample-unclear': error('A feed file holds several samples, or not the one asked for.'),
  'feed-not-common': error('A feed file holds no result of an analyte that the bench tested.'),
  'feed-condition-missing': note(
    'Another feed does not state its pH or its dissolved solids, so nothing is shown to be tested.',
  ),
  // Minerals
  'solids-not-rejection': note(
    'Dissolved solids behind a mineral stage are not a measure of rejection.',
  ),
  // Claims
  'claim-value-unreadable': warning('The figure of a claim cannot be compared with results.'),
  'claim-contradicted': note('Measurements contradict a claim.'),
  'certificate-untested': note(
    'A certified claim concerns what this feed held too little of to test it.',
  ),
  'certificate-unlisted': note(
    'The tables hold no challenge of this analyte under the standard a certified claim names.',
  ),
  'certificate-missing': note(
    'Contaminants found in the feed have no certified claim behind them.',
  ),
  // Water use
  'drain-runs-missing': note('A device with a drain line has no measured production run.'),
  'run-took-flush': warning('A production run was collected until after a flush.'),
  'drain-ways-differ': warning(
    'Pours collected with their flush and runs without it make different drain of a device.',
  ),
  'run-clean-zero': error('The measured runs of a device hold no clean water.'),
  'flush-volume-missing': error('A flush rule has no volume and no measured flush.'),
  'rule-incomplete': error('A flush rule lacks a figure its trigger needs.'),
  'pours-overlap': error('A recorded pour starts before the earlier one has ended.'),
  'pours-unordered': error('Recorded pours are not in order of time.'),
  'tank-curve-refused': note(
    'The drain of a tank device depends on how full the tank is; no curve or break-even is given.',
  ),
  'tank-ratio-fixed': note(
    'A tank device is played at the ratio measured at its draw size; other draws will differ.',
  ),
  'tank-incomplete': note('A row of tanks.csv lacks a figure that the refill model needs.'),
  'tank-impossible': warning('The figures of a storage tank cannot belong together.'),
  'tank-osmosis-unknown': note('A refill is computed without osmotic pressure.'),
  'tank-runs-disagree': warning('The refill model of a tank does not fit its measured runs.'),
  'tank-shortfall': note('A scenario draws more than a storage tank holds and refills in time.'),
  'scenarios-missing': note('The bench has no scenario.'),
  'simulation-input': error('The input of the drain simulation is not usable.'),
  // Pours
  'pour-reading-order': error('Cumulative readings of one run fall.'),
  'flow-not-standardised': note('A flow cannot be brought to 25 degC and the test pressure.'),
  'mass-density-assumed': note('A mass was turned into a volume at an assumed temperature.'),
  // Sensory tests
  'panel-count': error('A sensory test has more correct answers than answers.'),
  // Costs
  'tariff-unreadable': error('A tariff is not an amount, a currency and what it is for.'),
  'tariff-missing': note('A tariff is not stated, so what it prices is not counted.'),
  'cost-not-counted': note(
    'A part of the cost of a device is not known; its total is a lower bound.',
  ),
  'cost-input': error('The input of a cost is not usable.'),
  // Price lists and planned tests
  'price-missing': error('A package of a price list has no price.'),
  'price-conflict': error('A package of a price list stands with two prices.'),
  'price-limit-order': error('A detection limit of a price list is above the reporting limit.'),
  'prices-not-given': note('Nothing can be told by money: no price list was given.'),
  'question-unanswered': note('No package of the price list answers a question.'),
  // Idle rise
  'idle-tds-missing': note('No dissolved solids were read after a pause.'),
  'idle-rise-unsettled': note('Readings after a pause still fall at the last one.'),
  'tds-scale-missing': note('A reading of a TDS meter does not say on which scale.'),
  // Editions
  'edition-unreadable': error('An earlier edition given for comparison has errors of its own.'),
  'number-moved': warning('A published number differs from an earlier edition.'),
  // Settings, output, calls
  'setting-not-used': note('A setting is read and not used by this version.'),
  'output-exists': error('The output path holds files this tool did not write.'),
  'output-unwritable': error('The output cannot be written.'),
  'folder-not-empty': error('The folder for a new bench already holds files.'),
  'option-unknown': error('The call holds an unknown option, command or value.'),
  'option-clash': error('The call holds two options that exclude each other.'),
  'argument-missing': error('The call lacks a command, an argument or the value of an option.'),
  'measure-unknown': error('A measure is not one the bench has.'),
  'statistics-input': error('The input of a statistic is not usable.'),
  'statistics-no-convergence': error('An iterative fit did not converge.'),
} as const satisfies Readonly<Record<string, CodeEntry>>;

export type FindingCode = keyof typeof CODES;

/** Every one of them, for the generated documents too. @public */
export const FINDING_CODES: Readonly<Record<FindingCode, CodeEntry>> = CODES;
