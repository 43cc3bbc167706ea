import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import { defaultRelativeSd } from '../../uncertainty/default-relative-sd.js';
import { probabilityAboveZero } from '../../uncertainty/normal-probability.js';
import type { Episode } from '../evidence/episode.js';
import type { MeterEvidence } from '../evidence/meter-evidence.js';
import { type Thresholds, worthALook } from '../thresholds.js';
import { type RanByReading, ranByReadings } from './ran-by-readings.js';

/** Less rain is hardly a reason to drive to a controller: a quarter of an inch, at which rain sensors are commonly set. [mm] */
const LEAST_RAIN_MM = 6;

/** Landscapes need less than the reference: most of them at most this share of it. Common practice. */
const MOST_PLANT_FACTOR = 0.8;

/** Without hourly usage nobody saw the water: one pause of seven is taken not to have been written down. An assumption. */
const SURE_OF_REPLAY = 0.85;

/** What a reading showed is looked at for so long: rain that comes again within it and is not paused for is the same habit. Common practice. [d] */
const NEWS_DAYS = 30;

/** A day on which programs ran, and how likely it is that the rain at the property still covered the need. */
interface RanDay {
  readonly day: number;
  readonly litres: number;
  readonly covered: number;
}

/** Rain that covered the need, and the programs that ran through it. */
interface Spell {
  readonly firstDay: number;
  rainMm: number;
  usedMm: number;
  readonly ranDays: RanDay[];
}

/**
 * Watered in rain, as the settings alone show it: programs that ran on days for which rain had covered the need.
 *
 * Rain of a day covers the days after it until 0.8 of their reference ET has used it up. No meter is asked at first, so confidence is lower than where
 * hourly usage saw the water: 0.85 of the probability that the rain at the property, and not only at its station, still covered the need. The
 * reading after it may say more of whether the runs passed water (`ranByReadings`): then it is told with that. Days on which confidence is less than what
 * the organization wants are not counted.
 *
 * @param evidence - Rain, reference ET and programmed water by day. [mm] and [L]
 * @param thresholds - What the organization wants to be told. [any]
 * @returns One episode for each spell of rain that was watered through, with its own water, ended when the rain was used up. [code]
 */
export function rainNotPausedFor(evidence: MeterEvidence, thresholds: Thresholds): readonly Episode[] {
  const judged: Judged = { evidence, thresholds, byReading: ranByReadings(evidence, SURE_OF_REPLAY) };
  const episodes: Episode[] = [];
  let spell: Spell | null = null;
  for (let day = 0; day < evidence.days; day += 1) {
    if (spell) useUp(spell, evidence, day);
    if (spell && spell.usedMm >= spell.rainMm) {
      episodes.push(...told(spell, judged, day));
      spell = null;
    }
    const rain = evidence.rainMm[day] ?? Number.NaN;
    if (spell && rain > 0) spell.rainMm += rain;
    else if (rain >= LEAST_RAIN_MM) spell = { firstDay: day, rainMm: rain, usedMm: 0, ranDays: [] };
  }
  return spell ? [...episodes, ...told(spell, judged, null)] : episodes;
}

interface Judged {
  readonly evidence: MeterEvidence;
  readonly thresholds: Thresholds;
  readonly byReading: ReturnType<typeof ranByReadings>;
}

// The rain's own day is not looked at: nobody can tell whether the water or the rain came first.
function useUp(spell: Spell, evidence: MeterEvidence, day: number): void {
  const used = MOST_PLANT_FACTOR * (evidence.etoMm[day] ?? Number.NaN);
  // A day without weather ends what can be told.
  spell.usedMm = Number.isNaN(used) ? spell.rainMm : spell.usedMm + used;
  const litres = evidence.programmedLitres[day] ?? Number.NaN;
  const covered = probabilityAboveZero(spell.rainMm - spell.usedMm, defaultRelativeSd.rain * spell.rainMm);
  if (litres > 0) spell.ranDays.push({ day, litres, covered });
}

/** What is told of a spell: its days, the day by which that was sure and worth a look, and whether a reading said so. */
interface Told {
  readonly days: readonly RanDay[];
  readonly openedLocalDay: number;
  readonly confidence: number;
  readonly byReading: boolean;
}

function told(spell: Spell, judged: Judged, endDay: number | null): readonly Episode[] {
  const { evidence } = judged;
  const found = bySettings(spell, judged) ?? bySeen(spell, judged);
  const [first, last] = [found?.days[0], found?.days.at(-1)];
  if (!found || !first || !last) return [];
  const { meterId, pricePerLitre, firstDay, zones } = evidence;
  const litres = sumOf(found.days);
  const key = `watered in rain meter:${meterId} ${dateOfDayNumber(firstDay + spell.firstDay)}`;
  return [
    {
      kind: 'watered in rain',
      causeKey: key,
      causeFamily: key,
      meterId,
      controllerId: null,
      zoneIds: zones.map(({ zoneId }) => zoneId),
      fromDate: dateOfDayNumber(firstDay + first.day),
      untilDate: dateOfDayNumber(firstDay + last.day),
      litres,
      sdLitres: evidence.programmedRelativeSd * litres,
      money: pricePerLitre === null ? null : litres * pricePerLitre,
      confidence: found.confidence,
      evidence: { rainMm: spell.rainMm, usedMm: spell.usedMm, programmedLitres: litres, seenByMeter: found.byReading },
      says: { code: 'watered in rain', details: { meterId, rainMm: spell.rainMm, days: found.days.length } },
      openedLocalDay: found.openedLocalDay,
      clearedLocalDay: endOf(found, evidence, endDay),
    },
  ];
}

function endOf({ byReading, openedLocalDay }: Told, { firstDay, days }: MeterEvidence, endDay: number | null): number | null {
  if (!byReading) return endDay === null ? null : firstDay + endDay + 1;
  return openedLocalDay + NEWS_DAYS <= firstDay + days ? openedLocalDay + NEWS_DAYS : null;
}

const sumOf = (days: readonly RanDay[]): number => days.reduce((sum, { litres }) => sum + litres, 0);

function isWorth({ evidence, thresholds }: Judged, litres: number): boolean {
  const weighed = { litres, sdLitres: evidence.programmedRelativeSd * litres, pricePerLitre: evidence.pricePerLitre };
  return worthALook(weighed, { ...thresholds, minConfidence: 0 }) !== null;
}

// Sure enough without a meter, from the day on by which it was worth a look.
function bySettings({ ranDays }: Spell, judged: Judged): Told | null {
  const days = ranDays.filter(({ covered }) => SURE_OF_REPLAY * covered >= judged.thresholds.minConfidence);
  const at = days.findIndex((_, index) => isWorth(judged, sumOf(days.slice(0, index + 1))));
  const opening = days[at];
  if (!opening) return null;
  const openedLocalDay = judged.evidence.firstDay + opening.day + 1;
  return { days, openedLocalDay, confidence: SURE_OF_REPLAY * opening.covered, byReading: false };
}

function bySeen({ ranDays }: Spell, judged: Judged): Told | null {
  const { minConfidence } = judged.thresholds;
  const likely = ranDays.filter(({ covered }) => covered >= minConfidence);
  const seen: RanByReading | null = likely.length
    ? judged.byReading(
        likely.map(({ day }) => day),
        sumOf(likely),
      )
    : null;
  if (!seen) return null;
  const days = likely.filter(({ covered }) => covered * seen.probability >= minConfidence);
  if (!isWorth(judged, sumOf(days))) return null;
  const covered = days.reduce((least, day) => Math.min(least, day.covered), 1);
  return { days, openedLocalDay: seen.localDay, confidence: covered * seen.probability, byReading: true };
}
