import { defaultRelativeSd } from '../../uncertainty/default-relative-sd.js';
import { absence } from '../../volumes/absence.js';
import { absent, type Figure, known } from '../../volumes/figure.js';
import { grossVolume } from '../../volumes/gross-volume.js';
import { fillMissingWeather } from '../../volumes/missing-weather.js';
import type { NeededDepths } from '../../volumes/needing-zone.js';
import type { AccountZone } from '../account-input.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import type { CoveredMonth } from './covered-month.js';

/** A zone's need: the volume, and litres per day to fill other volumes by (null where no day is known). */
export interface NeededOfZone {
  readonly figure: Figure;
  readonly byDay: readonly number[] | null;
}

/**
 * What one zone needed: the root zone's daily balance, made gross, with what each uncertain input does to it.
 *
 * Plant factor, storage, evapotranspiration and rain are moved by one standard deviation to either side and half the difference is taken, as
 * the balance has corners; area and uniformity are exact.
 *
 * @param zone - The zone. [code]
 * @param depths - Net depths that its root zone needed. [mm]
 * @param month - The covered days, which of them have no weather, and the property's uncertain inputs. [d]
 * @returns The volume and the need by day. [L]
 * @throws {DomainError} As `grossVolume`.
 */
export function neededOfZone(zone: AccountZone, depths: NeededDepths, month: CoveredMonth): NeededOfZone {
  const { missing, inputs: of } = month;
  const perMm = grossVolume(1 as Quantity<'mm'>, zone);
  const byDay = () => litresByDay(depths, month, perMm);
  const filled = fillMissingWeather(depths.netMm, missing);
  if (filled === null)
    return needOf(absent(absence('weather-missing', { missingDays: missing.missingDays, days: missing.known.length })), byDay);
  const litres = filled * perMm;
  const filledLitres = (filled - depths.netMm) * perMm;
  const moved = (depth: number) => (fillMissingWeather(depth, missing) ?? 0) * perMm;
  const { plantFactor, rootStorage, eto, rain } = depths.moved;
  const inputs = [
    of.input('area', zone.id),
    of.input('uniformity', zone.id),
    of.input('plantFactor', zone.id),
    of.input('rootStorage', zone.id),
    of.input('eto', null),
    of.input('rain', null),
  ];
  const effects = [litres * areaSd(zone), litres * uniformityEffect(zone), moved(plantFactor), moved(rootStorage), moved(eto), moved(rain)];
  if (filledLitres !== 0) {
    inputs.push(of.input('filledWeather', null));
    effects.push(filledLitres * defaultRelativeSd.filled);
  }
  // Days of filled weather are as uncertain as their ETo says, and are part of what is estimated.
  const estimatedMm = missing.filledDays.reduce((sum, day) => sum + (depths.ofDays[day] ?? 0), 0);
  return needOf(known({ litres, inputs, effects }, filledLitres + estimatedMm * perMm), byDay);
}

// Most accounts never ask for the days.
function needOf(figure: Figure, daysOf: () => readonly number[] | null): NeededOfZone {
  let days: readonly number[] | null | undefined;
  return {
    figure,
    get byDay() {
      days = days === undefined ? daysOf() : days;
      return days;
    },
  };
}

/**
 * Relative standard deviation of a zone's area.
 *
 * @param zone - The zone. [code]
 * @returns The documented default for a recorded or an assumed area. [–]
 */
export function areaSd(zone: AccountZone): number {
  return defaultRelativeSd.area[zone.assumed.includes('areaM2') ? 'assumed' : 'recorded'];
}

// A day whose need is not known counts by its evapotranspiration when another volume is filled by need, as it does in the need itself.
function litresByDay({ netMm, ofDays }: NeededDepths, { missing, etWeights }: CoveredMonth, perMm: number) {
  const { known: knownDays, missingDays } = missing;
  if (missingDays === ofDays.length) return null;
  const knownWeight = etWeights.reduce((sum, weight, day) => sum + (knownDays[day] ? weight : 0), 0);
  const shareOf = (day: number) => (knownWeight > 0 ? (etWeights[day] as number) / knownWeight : 1 / (ofDays.length - missingDays));
  return Array.from(ofDays, (depth, day) => (knownDays[day] ? depth : netMm * shareOf(day)) * perMm);
}

/**
 * Relative effect of a zone's uniformity on its need.
 *
 * d ln(1/(0.4 + 0.6 DU)) / d ln DU, times the relative standard deviation of DU
 *
 * @param zone - The zone. [code]
 * @returns The share by which the need changes when the uniformity is one standard deviation above. [–]
 */
export function uniformityEffect(zone: AccountZone): number {
  const sd = defaultRelativeSd.uniformity[zone.assumed.includes('duLq') ? 'assumed' : 'recorded'];
  return (-0.6 * zone.duLq * sd) / (0.4 + 0.6 * zone.duLq);
}
