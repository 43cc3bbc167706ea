import { millimetres } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { isSound, type JudgedDay } from '../quality/judge-weather-days.js';
import { RAIN_WITHIN_KM } from './neighbour-station.js';

/** Rain of a day with how far it may be off. */
export type ToldRain = { readonly rainMm: Quantity<'mm'>; readonly sdMm: Quantity<'mm'> };

/** A neighbour's judged days, by day number, with its distance. */
export type RainNeighbour = { readonly days: ReadonlyMap<number, JudgedDay>; readonly distanceKm: number };

/** From this much on a day is wet. Common practice of climatology (World Meteorological Organization, from memory). [mm] */
const WET = 1;

/** The common days lie this many days before and after: the same season. As for the other values. [d] */
const REACH = 45;

/** Common days that the two must have where the neighbour is far. An assumption, as for the other values. */
const LEAST_COMMON_DAYS = 20;

/** Wet days among them from which on they tell how far a shower of one is off at the other. An assumption. */
const LEAST_WET_DAYS = 5;

/** Shares of a wet day's rain that it may be off where too few wet days are common: near, and farther. Assumptions. [–] */
const WET_SHARE = { near: 0.5, far: 1 } as const;

/** What may have fallen on a day that was dry at a near neighbour, where too few days are common. An assumption. [mm] */
const DRY_MM = 1;

/** A neighbour's rain is never surer than this, however well the two agree. Assumptions. [–] and [mm] */
const LEAST_SHARE = 0.25;
const LEAST_MM = 0.2;

/** A doubted amount may be off by this share of it. An assumption. [–] */
const DOUBTED_SHARE = 0.5;

/**
 * Rain of a day as a neighbour measured it, with how far the two differed on the common days of the 45 days before and after.
 *
 * wet: sd = P · √(Σ (own - neighbour)² / Σ neighbour²); dry: sd = √(Σ (own - neighbour)² / n), each over common days of its kind
 *
 * The amount is taken as it is: what one station has more than the other over a season is part of the deviation.
 *
 * @param dayNumber - Day number. [d]
 * @param own - The station's judged days, by day number. [any]
 * @param neighbour - The neighbour's days and distance. [km]
 * @returns Rain and its standard deviation; null where the neighbour does not know it, or is farther than 15 km and fewer than 20 days are
 * common. [mm]
 * @source Common practice: a missing daily amount is taken from the nearest gauge. Limits and floors are assumptions.
 */
export function neighbourRain(dayNumber: number, own: ReadonlyMap<number, JudgedDay>, neighbour: RainNeighbour): ToldRain | null {
  const there = neighbour.days.get(dayNumber);
  const rainMm = there?.usable.rain ?? null;
  if (!there || rainMm === null) return null;
  const common = commonRain(dayNumber, own, neighbour.days);
  const isNear = neighbour.distanceKm <= RAIN_WITHIN_KM;
  if (!isNear && common.length < LEAST_COMMON_DAYS) return null;
  const sd = rainMm >= WET ? wetSd(rainMm, common, isNear) : drySd(common);
  const floored = Math.max(sd, LEAST_MM, LEAST_SHARE * rainMm);
  return { rainMm, sdMm: (isSound(there, 'rain') ? floored : Math.hypot(floored, doubtedRainSd(rainMm))) as Quantity<'mm'> };
}

/**
 * How far a doubted amount of rain may be off.
 *
 * @param rain - Rain as it was measured. [mm]
 * @returns Standard deviation: half of it. [mm]
 * @throws {DomainError} `LENGTH_OUT_OF_DOMAIN` when not finite.
 * @source Assumption, stated as such.
 */
export function doubtedRainSd(rain: number): Quantity<'mm'> {
  return millimetres(DOUBTED_SHARE * rain);
}

type CommonRain = { readonly own: number; readonly neighbour: number };

function commonRain(number: number, own: ReadonlyMap<number, JudgedDay>, others: ReadonlyMap<number, JudgedDay>): readonly CommonRain[] {
  const common: CommonRain[] = [];
  for (let day = number - REACH; day <= number + REACH; day++) {
    const [here, there] = [own.get(day), others.get(day)];
    if (here && there && isSound(here, 'rain') && isSound(there, 'rain'))
      common.push({ own: here.usable.rain!, neighbour: there.usable.rain! });
  }
  return common;
}

function wetSd(rainMm: number, common: readonly CommonRain[], isNear: boolean): number {
  const wet = common.filter(({ neighbour }) => neighbour >= WET);
  if (wet.length < LEAST_WET_DAYS) return rainMm * (isNear ? WET_SHARE.near : WET_SHARE.far);
  return rainMm * Math.sqrt(squares(wet) / wet.reduce((sum, { neighbour }) => sum + neighbour ** 2, 0));
}

function drySd(common: readonly CommonRain[]): number {
  const dry = common.filter(({ neighbour }) => neighbour < WET);
  return dry.length < LEAST_COMMON_DAYS ? DRY_MM : Math.sqrt(squares(dry) / dry.length);
}

const squares = (common: readonly CommonRain[]): number => common.reduce((sum, { own, neighbour }) => sum + (own - neighbour) ** 2, 0);
