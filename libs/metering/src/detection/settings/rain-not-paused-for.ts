import { dateOfDayNumber } from '@rillbook/irrigation/calendar/local-date.js';
import { defaultRelativeSd } from '../../uncertainty/default-relative-sd.js';
import { probabilityAboveZero } from '../../uncertainty/normal-probability.js';
import type { Episode } from '../evidence/episode.js';
import type { MeterEvidence } from '../evidence/meter-evidence.js';
import { type Thresholds, worthALook } from '../thresholds.js';

/** Less rain is hardly a reason to drive to a controller: a quarter of an inch, at which rain sensors are commonly set. [mm] */
const LEAST_RAIN_MM = 6;

/** Landscapes need less than the reference: most of them at most this share of it. Common practice. */
const MOST_PLANT_FACTOR = 0.8;

/** Without hourly usage nobody saw the water: one pause of seven is taken not to have been written down. An assumption. */
const SURE_OF_REPLAY = 0.85;

/** Rain that covered the need, and the programs that ran through it: `opened` is the day by which that was sure and worth a look. */
interface Spell {
  readonly firstDay: number;
  rainMm: number;
  usedMm: number;
  readonly ranDays: number[];
  litres: number;
  opened: { readonly day: number; readonly confidence: number } | null;
}

/**
 * Watered in rain, as the settings alone show it: programs that ran on days for which rain had covered the need.
 *
 * Rain of a day covers the days after it until 0.8 of their reference ET has used it up. No meter is asked, so confidence is lower than where
 * hourly usage saw the water: 0.85 of the probability that the rain at the property, and not only at its station, still covered the need. Days on
 * which that is less than what the organization wants are not counted.
 *
 * @param evidence - Rain, reference ET and programmed water by day. [mm] and [L]
 * @param thresholds - What the organization wants to be told. [any]
 * @returns One episode for each spell of rain that was watered through, with its own water, ended when the rain was used up. [code]
 */
export function rainNotPausedFor(evidence: MeterEvidence, thresholds: Thresholds): readonly Episode[] {
  const episodes: Episode[] = [];
  let spell: Spell | null = null;
  for (let day = 0; day < evidence.days; day += 1) {
    if (spell) useUp(spell, evidence, thresholds, day);
    if (spell && spell.usedMm >= spell.rainMm) {
      episodes.push(...told(spell, evidence, day));
      spell = null;
    }
    const rain = evidence.rainMm[day] ?? Number.NaN;
    if (spell && rain > 0) spell.rainMm += rain;
    else if (rain >= LEAST_RAIN_MM) spell = { firstDay: day, rainMm: rain, usedMm: 0, ranDays: [], litres: 0, opened: null };
  }
  return spell ? [...episodes, ...told(spell, evidence, null)] : episodes;
}

// The rain's own day is not looked at: nobody can tell whether the water or the rain came first.
function useUp(spell: Spell, evidence: MeterEvidence, thresholds: Thresholds, day: number): void {
  const used = MOST_PLANT_FACTOR * (evidence.etoMm[day] ?? Number.NaN);
  // A day without weather ends what can be told.
  spell.usedMm = Number.isNaN(used) ? spell.rainMm : spell.usedMm + used;
  const litres = evidence.programmedLitres[day] ?? Number.NaN;
  const covered = probabilityAboveZero(spell.rainMm - spell.usedMm, defaultRelativeSd.rain * spell.rainMm);
  const confidence = SURE_OF_REPLAY * covered;
  if (!(litres > 0) || confidence < thresholds.minConfidence) return;
  spell.ranDays.push(day);
  spell.litres += litres;
  const weighed = { litres: spell.litres, sdLitres: evidence.programmedRelativeSd * spell.litres, pricePerLitre: evidence.pricePerLitre };
  if (worthALook(weighed, { ...thresholds, minConfidence: 0 })) spell.opened ??= { day, confidence };
}

function told(spell: Spell, evidence: MeterEvidence, endDay: number | null): readonly Episode[] {
  const { opened, ranDays, litres } = spell;
  const [first, last] = [ranDays[0], ranDays.at(-1)];
  if (!opened || first === undefined || last === undefined) return [];
  const { meterId, pricePerLitre, firstDay, zones } = evidence;
  const key = `watered in rain meter:${meterId} ${dateOfDayNumber(firstDay + spell.firstDay)}`;
  return [
    {
      kind: 'watered in rain',
      causeKey: key,
      causeFamily: key,
      meterId,
      controllerId: null,
      zoneIds: zones.map(({ zoneId }) => zoneId),
      fromDate: dateOfDayNumber(firstDay + first),
      untilDate: dateOfDayNumber(firstDay + last),
      litres,
      sdLitres: evidence.programmedRelativeSd * litres,
      money: pricePerLitre === null ? null : litres * pricePerLitre,
      confidence: opened.confidence,
      evidence: { rainMm: spell.rainMm, usedMm: spell.usedMm, programmedLitres: litres, seenByMeter: false },
      says: { code: 'watered in rain', details: { meterId, rainMm: spell.rainMm, days: ranDays.length } },
      openedLocalDay: firstDay + opened.day + 1,
      clearedLocalDay: endDay === null ? null : firstDay + endDay + 1,
    },
  ];
}
