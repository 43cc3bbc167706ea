import { defaultRelativeSd } from '../uncertainty/default-relative-sd.js';
import { inputKey } from '../uncertainty/input-share.js';
import { absence } from '../volumes/absence.js';
import { absent, type Figure, known } from '../volumes/figure.js';
import { fillMissingDays } from '../volumes/fill-missing-days.js';
import { grossVolume } from '../volumes/gross-volume.js';
import { neededDepths, type NeedingZone, type WeatherShift } from '../volumes/needed-depths.js';
import type { WeatherSeries } from '../volumes/weather-series.js';
import type { AccountZone } from './account-input.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** The month as far as it is covered, with the weather that leads up to it and the ET weight of each covered day. */
export interface CoveredMonth {
  readonly month: string;
  readonly firstDay: number;
  readonly days: number;
  readonly daysInMonth: number;
  readonly series: WeatherSeries;
  readonly etWeights: readonly number[];
}

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
 * @param month - The covered days and the weather. [mm]
 * @returns The volume and the need by day. [L]
 * @throws {DomainError} As `neededDepths` and `grossVolume`.
 */
export function neededOfZone(zone: AccountZone, month: CoveredMonth): NeededOfZone {
  const depths = depthsOf(zone, month, {});
  const gross = (depth: number) => grossVolume(depth as Quantity<'mm'>, zone);
  const filled = total(depths, month);
  if (filled === null) {
    const days = depths.filter((depth) => depth === null).length;
    return { figure: absent(absence('weather-missing', { missingDays: days, days: month.days })), byDay: byDay(depths, gross) };
  }
  const litres = gross(filled.depth);
  const parts = new Map([
    [inputKey('area', zone.id), litres * areaSd(zone)],
    [inputKey('uniformity', zone.id), litres * uniformityEffect(zone)],
    [inputKey('filledWeather', null), gross(filled.filledDepth) * defaultRelativeSd.filled],
    ...movedParts(zone, month).map(([key, depth]) => [key, gross(Math.abs(depth)) * Math.sign(depth)] as const),
  ]);
  return { figure: known({ litres, parts }, gross(filled.filledDepth)), byDay: byDay(depths, gross) };
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

interface Moved {
  readonly plant?: number;
  readonly storage?: number;
  readonly eto?: number;
  readonly rain?: number;
}

function movedParts(zone: AccountZone, month: CoveredMonth): readonly (readonly [string, number])[] {
  const assumed = (name: AccountZone['assumed'][number]) => (zone.assumed.includes(name) ? 'assumed' : 'recorded');
  const defaultFactors = [zone.assumed.includes('density'), zone.assumed.includes('shade')].filter(Boolean).length;
  const plantSd = Math.hypot(
    defaultRelativeSd.plantFactor[assumed('plantFactor')],
    Math.sqrt(defaultFactors) * defaultRelativeSd.densityOrShade,
  );
  const storageSd = defaultRelativeSd.rootStorage[assumed('rawMm')];
  const half = (of: (sign: number) => Moved) => {
    const [up, down] = [1, -1].map((sign) => total(depthsOf(zone, month, of(sign)), month)?.depth ?? 0);
    return ((up ?? 0) - (down ?? 0)) / 2;
  };
  return [
    [inputKey('plantFactor', zone.id), half((sign) => ({ plant: sign * plantSd }))],
    [inputKey('rootStorage', zone.id), half((sign) => ({ storage: sign * storageSd }))],
    [inputKey('eto', null), half((sign) => ({ eto: sign }))],
    [inputKey('rain', null), half((sign) => ({ rain: sign * defaultRelativeSd.rain }))],
  ];
}

function depthsOf(zone: AccountZone, month: CoveredMonth, moved: Moved): readonly (number | null)[] {
  const root: NeedingZone = {
    plantCoefficient: zone.plantFactor * zone.density * zone.shade * (1 + (moved.plant ?? 0)),
    rawMm: zone.rawMm * (1 + (moved.storage ?? 0)),
  };
  const shift: WeatherShift = { etoSds: moved.eto ?? 0, rainFactor: 1 + (moved.rain ?? 0) };
  return neededDepths(month.series, month.firstDay, root, shift);
}

function total(depths: readonly (number | null)[], month: CoveredMonth): { readonly depth: number; readonly filledDepth: number } | null {
  const filled = fillMissingDays(
    depths.map((depth, day) => ({
      litres: depth ?? 0,
      knownShare: depth === null ? 0 : 1,
      etWeight: month.etWeights[day] ?? 1,
      neededLitres: null,
    })),
  );
  return filled.litres === null ? null : { depth: filled.litres, filledDepth: filled.filledLitres };
}

// A day whose need is not known counts as the mean of the others when another volume is filled by need.
function byDay(depths: readonly (number | null)[], gross: (depth: number) => number): readonly number[] | null {
  const knownDepths = depths.filter((depth) => depth !== null);
  if (knownDepths.length === 0) return null;
  const mean = knownDepths.reduce((sum, depth) => sum + depth, 0) / knownDepths.length;
  return depths.map((depth) => gross(depth ?? mean));
}

// d ln(1/(0.4 + 0.6 DU)) / d ln DU, times the relative standard deviation of DU.
function uniformityEffect(zone: AccountZone): number {
  const sd = defaultRelativeSd.uniformity[zone.assumed.includes('duLq') ? 'assumed' : 'recorded'];
  return (-0.6 * zone.duLq * sd) / (0.4 + 0.6 * zone.duLq);
}
