import { DomainError } from '@rillbook/units/domain-error.js';
import { likelyRegisters } from './likely-registers.js';

/** What a reading looks like beside the one before it. */
export type ReadingJudgement =
  | 'ok'
  | 'rollover'
  | 'lower than last'
  | 'implausibly high'
  | 'stuck'
  | 'unit mixed up'
  | 'digits swapped'
  | 'digit mistyped';

/** What the meter is expected to pass in a day, from its own history or from need. */
export interface ReadingExpectation {
  readonly litresPerDay: number;
  readonly sdLitresPerDay: number;
}

/**
 * Two consecutive readings of one meter without a swap between them, and how its register counts. `usual` is what it usually passes at that
 * time of the year, by which what was meant is chosen; without it the expectation stands in.
 */
export interface ReadingPair {
  readonly previousRegister: number;
  readonly nextRegister: number;
  readonly elapsedDays: number;
  readonly digits: number | null;
  readonly litresPerRegisterUnit: number;
  readonly expectation: ReadingExpectation | null;
  readonly usual?: ReadingExpectation | null;
}

/**
 * A judgement of a reading. `litres` is the volume as read, null where the register ran backwards; `likelyRegister` what was probably meant;
 * `factor` the factor between the units that were probably mixed up.
 */
export interface JudgedReading {
  readonly judgement: ReadingJudgement;
  readonly litres: number | null;
  readonly likelyRegister: number | null;
  readonly factor: number | null;
}

/** How far above the expectation a volume is implausible: common practice. */
const IMPLAUSIBLE_SDS = 4;
const IMPLAUSIBLE_RATIO = 1.5;

/** How near to the expectation a mended reading must be; a factor fits almost any leak, so it must fit well: common practice. */
const NEAR_SDS = { 'digits swapped': 2, 'unit mixed up': 1, 'digit mistyped': 1 } as const;

/**
 * One of ten digits in any place fits far more often by chance than a swap or a unit: it is offered where they do not fit, and only where the
 * expectation is so narrow beside that place that it would fit by chance in less than a quarter of cases: common practice.
 */
const OFFERED_LAST = 'digit mistyped';
const MOST_BY_CHANCE = 0.25;

/** Floating-point dust of a logarithm. */
const DUST = 1e-9;

/** A register that should have moved by this many standard deviations less than expected is stuck if it has not moved at all. */
const STUCK_SDS = 2;

/** A register that stands still is suspect after a week: common practice. */
const STUCK_AFTER_DAYS = 7;

/** Without an expectation, or a number of digits, a register has rolled over when it was in its last tenth and is in its first. */
const LAST_TENTH = 0.9;

/**
 * Judges a reading by the one before it and by what was expected.
 *
 * @param pair - Both registers, the days between them, digits, litres per register unit and the expectation. [any]
 * @returns The judgement, the volume as read and what was probably meant. [L] and [any]
 * @throws {DomainError} `READING_OUT_OF_DOMAIN` when a register is below zero or has too many digits, or no time has passed.
 */
export function judgeReading(pair: ReadingPair): JudgedReading {
  check(pair);
  const difference = pair.nextRegister - pair.previousRegister;
  if (difference < 0) return judgeLower(pair);
  const litres = difference * pair.litresPerRegisterUnit;
  if (difference === 0) return { judgement: isStuck(pair) ? 'stuck' : 'ok', litres: 0, likelyRegister: null, factor: null };
  if (isHigh(litres, pair)) return mended(pair, litres) ?? { judgement: 'implausibly high', litres, likelyRegister: null, factor: null };
  if (isLow(litres, pair)) return mended(pair, litres, 'unit mixed up') ?? { judgement: 'ok', litres, likelyRegister: null, factor: null };
  return { judgement: 'ok', litres, likelyRegister: null, factor: null };
}

function judgeLower(pair: ReadingPair): JudgedReading {
  // Where nobody has said how many digits there are, the register's own last number shows them.
  const top = 10 ** (pair.digits ?? Math.max(1, String(Math.floor(pair.previousRegister)).length));
  const litres = (pair.nextRegister - pair.previousRegister + top) * pair.litresPerRegisterUnit;
  const passedTop = pair.previousRegister >= LAST_TENTH * top && pair.nextRegister < (1 - LAST_TENTH) * top;
  const plausible = pair.expectation ? !isHigh(litres, pair) : passedTop;
  const misread = mended(pair, null);
  const isRollover = plausible && (pair.digits !== null || passedTop) && !(misread && isBeyondUsual(litres, pair));
  if (isRollover) return { judgement: 'rollover', litres, likelyRegister: null, factor: null };
  return misread ?? { judgement: 'lower than last', litres: null, likelyRegister: null, factor: null };
}

// Possible, yet far more than is usual at the time: where another register that may have been meant is as usual, that is likelier than a rollover.
function isBeyondUsual(litres: number, { usual, elapsedDays }: ReadingPair): boolean {
  return isHigh(litres, { elapsedDays, expectation: usual ?? null });
}

// The likeliest of the mended readings, where one lies near the expectation.
function mended(pair: ReadingPair, litres: number | null, only?: ReadingJudgement): JudgedReading | null {
  const expectation = pair.usual ?? pair.expectation;
  if (!expectation) return null;
  const expected = expectation.litresPerDay * pair.elapsedDays;
  const sd = expectation.sdLitresPerDay * pair.elapsedDays;
  const best = likelyRegisters(pair)
    .filter(({ judgement }) => !only || judgement === only)
    .map((candidate) => ({
      ...candidate,
      miss: Math.abs((candidate.register - pair.previousRegister) * pair.litresPerRegisterUnit - expected),
    }))
    .filter(({ judgement, register, miss }) => register >= pair.previousRegister && miss <= NEAR_SDS[judgement] * sd)
    .filter(({ judgement, register }) => judgement !== OFFERED_LAST || fitsByChance(pair, register, sd) < MOST_BY_CHANCE)
    .sort((a, b) => Number(a.judgement === OFFERED_LAST) - Number(b.judgement === OFFERED_LAST) || a.miss - b.miss)[0];
  return best ? { judgement: best.judgement, litres, likelyRegister: best.register, factor: best.factor } : null;
}

// Registers that differ in one place stand as far apart as that place counts.
function fitsByChance({ nextRegister, litresPerRegisterUnit }: ReadingPair, register: number, sd: number): number {
  const place = 10 ** Math.floor(Math.log10(Math.abs(register - nextRegister)) + DUST);
  return (2 * NEAR_SDS[OFFERED_LAST] * sd) / (place * litresPerRegisterUnit);
}

function isHigh(litres: number, { expectation, elapsedDays }: Pick<ReadingPair, 'expectation' | 'elapsedDays'>): boolean {
  if (!expectation) return false;
  const expected = expectation.litresPerDay * elapsedDays;
  return litres > expected + IMPLAUSIBLE_SDS * expectation.sdLitresPerDay * elapsedDays && litres > IMPLAUSIBLE_RATIO * expected;
}

function isLow(litres: number, { expectation, elapsedDays }: ReadingPair): boolean {
  return expectation !== null && litres < (expectation.litresPerDay - IMPLAUSIBLE_SDS * expectation.sdLitresPerDay) * elapsedDays;
}

function isStuck({ expectation, elapsedDays, litresPerRegisterUnit }: ReadingPair): boolean {
  if (!expectation || elapsedDays < STUCK_AFTER_DAYS) return false;
  return (expectation.litresPerDay - STUCK_SDS * expectation.sdLitresPerDay) * elapsedDays > litresPerRegisterUnit;
}

function check(pair: ReadingPair): void {
  const { previousRegister, nextRegister, elapsedDays, digits, litresPerRegisterUnit } = pair;
  const top = digits === null ? Number.POSITIVE_INFINITY : 10 ** digits;
  const registers = [previousRegister, nextRegister].every((register) => register >= 0 && register < top);
  if (!(registers && elapsedDays > 0 && litresPerRegisterUnit > 0)) {
    throw new DomainError('READING_OUT_OF_DOMAIN', { previousRegister, nextRegister, elapsedDays, digits, litresPerRegisterUnit });
  }
}
