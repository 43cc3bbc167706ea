import { probabilityAboveZero } from '../../uncertainty/normal-probability.js';
import type { Episode } from '../evidence/episode.js';
import { worthALook } from '../thresholds.js';
import type { IntervalVolumes } from './interval-volumes.js';
import { usualRatioOf } from './habit/usual-ratio.js';
import type { MeterHabit } from './habit/meter-habit.js';
import { noiseSd } from './habit/teach-habit.js';
import { aboutMeter, type JudgedMeter, monthOf } from './monthly-episode.js';
import { FEWEST_READINGS } from './monthly-limits.js';

/** Ratios this near to 1 say nothing about flows: a meter and a flow test are good to some percent each. Common practice. */
const LEAST_OFF = 0.07;

/** A scatter beyond it is no habit. As in the month account. */
const MOST_NOISE = 0.1;

/**
 * Flow to be tested: a ratio of metered to programmed that has always been off, steadily. One episode, and never a leak.
 *
 * @param judged - The meter and the thresholds. [code]
 * @param habit - What its readings have taught. [code]
 * @param volumes - The newest of them. [L]
 * @returns The episode, or null where the ratio is near 1, not yet a habit or not worth a look. [code]
 */
export function flowTestOf(judged: JudgedMeter, habit: MeterHabit, volumes: IntervalVolumes): Episode | null {
  const programmed = volumes.programmed ?? 0;
  // A flow that nobody wrote down cannot be wrong.
  if (judged.isIndexed) return null;
  if (habit.taught < FEWEST_READINGS || noiseSd(habit) > MOST_NOISE || programmed <= 0) return null;
  const { ratio: usualRatio, relativeSd } = usualRatioOf(habit, volumes);
  const beyond = Math.abs(Math.log(usualRatio)) - Math.log1p(LEAST_OFF);
  const confidence = probabilityAboveZero(beyond, relativeSd);
  if (confidence < judged.thresholds.minConfidence) return null;
  const perDay = (Math.abs(usualRatio - 1) * programmed) / volumes.days;
  const worthy = worthALook({ litres: monthOf(perDay), sdLitres: 0, pricePerLitre: judged.price }, judged.thresholds);
  if (!worthy) return null;
  const key = `flow to be tested meter:${judged.meterId}`;
  const ratio = volumes.metered / programmed;
  return {
    ...aboutMeter(judged, volumes.fromLocalDay, volumes.toLocalDay),
    kind: 'flow to be tested',
    causeKey: key,
    causeFamily: key,
    litres: worthy.litres,
    sdLitres: monthOf((usualRatio * relativeSd * programmed) / volumes.days),
    // What is recorded wrong costs nothing by itself.
    money: null,
    confidence,
    evidence: { usualRatio, ratioSd: usualRatio * relativeSd, noise: noiseSd(habit), readings: habit.taught },
    says: {
      code: 'flow to be tested',
      details: { meterId: judged.meterId, ratio, usualRatio, programmedLitres: programmed, meteredLitres: volumes.metered },
    },
    openedLocalDay: volumes.toLocalDay,
    clearedLocalDay: null,
  };
}

/**
 * Whether a habit is surely near 1, so that flows on record need no test any more.
 *
 * @param habit - What the meter's readings have taught. [code]
 * @param volumes - The newest of them. [L]
 * @returns True within seven hundredths, its standard deviation included. [–]
 */
export function isNearOne(habit: MeterHabit, volumes: IntervalVolumes): boolean {
  const { ratio, relativeSd } = usualRatioOf(habit, volumes);
  return Math.abs(Math.log(ratio)) + relativeSd < Math.log1p(LEAST_OFF);
}
