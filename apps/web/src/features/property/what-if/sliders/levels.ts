import type { ChangeOfZone, ZoneOfYear } from '../ask-year.js';

/** How the sliders stand, in percent; null is as it is. */
export interface Levels {
  readonly plants: number | null;
  readonly uniformity: number | null;
  readonly area: number | null;
}

export type LevelName = keyof Levels;

export const AS_IT_IS: Levels = { plants: null, uniformity: null, area: null };

/** From where to where a slider goes, and where things stand now. [%] */
export interface Span {
  readonly min: number;
  readonly max: number;
  readonly now: number;
}

/** Plants of very low need have a factor of 0.1, vegetables and sod one of 1: the table of plant factors. [%] */
const PLANT_FACTORS = { min: 10, max: 100 } as const;
/** How far all plants together are moved: common practice, no source. [%] */
const SHARE_OF_PLANTS = { min: 20, max: 120, now: 100 } as const;
/** From a system in need of repair to a pressure-compensating drip line: common practice, no source. [%] */
const UNIFORMITIES = { min: 30, max: 95 } as const;
const SHARE_OF_AREA = { min: 0, max: 100, now: 100 } as const;

const percent = (share: number): number => Math.max(1, Math.round(100 * share));
const reaching = (now: number, { min, max }: { readonly min: number; readonly max: number }): Span => ({
  min: Math.min(min, now),
  max: Math.max(max, now),
  now,
});

/** The sliders' spans: of one zone its own figures; of all, shares of what they are and the least uniformity of any. */
export function spansOf(zones: readonly ZoneOfYear[], isOne: boolean): Readonly<Record<LevelName, Span>> {
  const [first] = zones;
  const least = percent(zones.reduce((lowest, { duLq }) => Math.min(lowest, duLq), 1));
  const uniformity = reaching(least, UNIFORMITIES);
  return {
    plants: isOne && first ? reaching(percent(first.plantFactor), PLANT_FACTORS) : SHARE_OF_PLANTS,
    uniformity: isOne ? uniformity : { ...uniformity, min: least },
    area: SHARE_OF_AREA,
  };
}

/** What the sliders ask of a zone: plants as a factor for one zone and as a share for all; uniformity as it is meant, or at least so much. */
export function changeOf({ plants, uniformity, area }: Levels, isOne: boolean): ChangeOfZone {
  const plantFactorOf = (now: number): number => (plants === null ? now : isOne ? plants / 100 : (now * plants) / 100);
  const duLqOf = (now: number): number => (uniformity === null ? now : isOne ? uniformity / 100 : Math.max(now, uniformity / 100));
  return (zone) => ({
    ...zone,
    plantFactor: plantFactorOf(zone.plantFactor),
    duLq: duLqOf(zone.duLq),
    areaM2: area === null ? zone.areaM2 : (zone.areaM2 * area) / 100,
  });
}
