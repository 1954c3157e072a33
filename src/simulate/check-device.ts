import { ABOVE_ZERO, checkNumber, FRACTION, refuseInput, ZERO_OR_MORE } from './check-number.ts';
import type { DrainDevice, FlushRule, FlushTrigger, QuietHours } from './drain-device.ts';
import { DAY_S, SAME_INSTANT_S } from './same-instant.ts';

type Anchor = NonNullable<FlushRule['anchor']>;

/** The anchors each trigger can have; the first is its default. None: the trigger has no anchor. */
const ANCHORS: Readonly<Record<FlushTrigger, readonly Anchor[]>> = {
  idle: ['pour', 'power-on'],
  interval: ['power-on', 'last-flush'],
  dump: ['power-on'],
  start: [],
  produced: [],
  'power-on': [],
};

/** A pause that comes again and again; shorter ones would be one endless instant. */
const LASTING = {
  holds: (value: number) => value > SAME_INSTANT_S && value < Number.POSITIVE_INFINITY,
  words: `a finite number of seconds above ${SAME_INSTANT_S}`,
};

const OF_DAY = {
  holds: (value: number) => value >= 0 && value <= DAY_S,
  words: `a number of seconds after midnight, 0 to ${DAY_S}`,
};

/**
 * Checks every figure of a device before it is played.
 *
 * @throws {BenchError} simulation-input, naming the rule and the figure
 */
export function checkDevice(device: DrainDevice): void {
  checkNumber('drainRatio', device.drainRatio, ZERO_OR_MORE);
  if (device.perStartL !== undefined) checkNumber('perStartL', device.perStartL, ZERO_OR_MORE);
  checkFlow(device.cleanFlowLPerMin);
  for (const [index, rule] of device.flushRules.entries()) checkRule(rule, index);
}

/** @throws {BenchError} simulation-input when a flow is given and is not above 0 */
export function checkFlow(cleanFlowLPerMin: number | undefined): void {
  if (cleanFlowLPerMin !== undefined) {
    checkNumber('cleanFlowLPerMin', cleanFlowLPerMin, {
      // Its inverse must be a number too.
      holds: (value) => value > 0 && Number.isFinite(value) && Number.isFinite(60 / value),
      words: ABOVE_ZERO.words,
    });
  }
}

function checkRule(rule: FlushRule, index: number): void {
  const where = `flushRules[${index}]`;
  if (typeof rule.rule !== 'string') refuseInput(`${where} has no name`, 'give rule as text');
  const name = `${where} (${rule.rule})`;
  if (!Object.hasOwn(ANCHORS, rule.trigger)) {
    refuseWord(name, 'trigger', rule.trigger, Object.keys(ANCHORS));
  }
  checkNumber(`${name} volumeL`, rule.volumeL, ZERO_OR_MORE);
  checkOptional(`${name} drainFraction`, rule.drainFraction, FRACTION);
  checkOptional(`${name} minIntervalS`, rule.minIntervalS, ZERO_OR_MORE);
  checkOptional(`${name} afterS`, rule.afterS, ZERO_OR_MORE);
  checkOptional(`${name} afterL`, rule.afterL, ZERO_OR_MORE);
  checkWord(name, 'water', rule.water, ['feed', 'clean']);
  checkAnchor(name, rule);
  if (rule.quiet !== undefined) checkQuiet(name, rule.quiet);
  checkAfter(name, rule);
}

function checkOptional(name: string, value: unknown, demand: typeof ZERO_OR_MORE): void {
  if (value !== undefined) checkNumber(name, value, demand);
}

function checkAfter(name: string, rule: FlushRule): void {
  switch (rule.trigger) {
    case 'idle':
      checkNumber(`${name} afterS`, rule.afterS, rule.repeat === true ? LASTING : ZERO_OR_MORE);
      break;
    case 'interval':
      checkNumber(`${name} afterS`, rule.afterS, LASTING);
      break;
    case 'produced':
      checkNumber(`${name} afterL`, rule.afterL, ABOVE_ZERO);
      break;
    case 'dump':
      if ((rule.afterS === undefined) === (rule.afterL === undefined)) {
        refuseInput(
          `${name} has ${rule.afterS === undefined ? 'neither afterS nor' : 'both afterS and'} afterL`,
          'give a dump either afterS or afterL; two dumps are two rules',
        );
      }
      if (rule.afterS !== undefined) checkNumber(`${name} afterS`, rule.afterS, LASTING);
      else checkNumber(`${name} afterL`, rule.afterL, ABOVE_ZERO);
      break;
    default: // start: afterS may be left out; power-on needs neither
  }
}

function checkAnchor(name: string, rule: FlushRule): void {
  checkWord(name, 'anchor', rule.anchor, ['pour', 'power-on', 'last-flush']);
  const anchors = ANCHORS[rule.trigger];
  if (anchors.length > 0) checkWord(name, `anchor of ${rule.trigger}`, rule.anchor, anchors);
}

function checkQuiet(name: string, quiet: QuietHours): void {
  checkNumber(`${name} quiet.fromS`, quiet.fromS, OF_DAY);
  checkNumber(`${name} quiet.toS`, quiet.toS, OF_DAY);
  if (!['skip', 'defer'].includes(quiet.mode)) {
    refuseWord(name, 'quiet.mode', quiet.mode, ['skip', 'defer']);
  }
}

function checkWord(
  name: string,
  field: string,
  word: string | undefined,
  words: readonly string[],
): void {
  if (word !== undefined && !words.includes(word)) refuseWord(name, field, word, words);
}

function refuseWord(name: string, field: string, word: unknown, words: readonly string[]): never {
  refuseInput(`${name}: ${field} is "${String(word)}"`, `write ${words.join(', ')}`);
}
