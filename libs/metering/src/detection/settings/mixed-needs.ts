import { DomainError } from '@rillbook/units/domain-error.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { grossVolume } from '../../volumes/gross-volume.js';
import type { FindingCandidate } from '../finding-candidate.js';

/** Needs do not match from this difference of plant factors on: less than one step between water-need categories (0.2, 0.5, 0.8), more than their error. */
const LEAST_DIFFERENCE = 0.2;

/** The thirsty ones are few while they cover no more than half of the zone: else the others are those misplaced. Common practice. */
const MOST_THIRSTY_COVER = 0.5;

/** Plants of a zone: the share of the cover that they have, in any unit, and their plant factor with density and shade. */
export interface SharedZone {
  readonly zoneId: string;
  readonly plants: readonly { readonly cover: number; readonly plantFactor: number }[];
  readonly areaM2: number;
  readonly duLq: number;
  readonly leachingFraction: number;
  /** Reference ET of a year at the property. [mm] */
  readonly etoOfYear: number;
}

/** What few thirsty plants cost in a zone that is watered for them. */
export interface MixedNeeds {
  readonly litresPerYear: number;
  readonly thirstiestFactor: number;
  readonly coverFactor: number;
  /** Share of the cover that the thirstiest have. [–] */
  readonly thirstyCover: number;
}

/**
 * Water that a few thirsty plants cost in a year, when the whole zone is watered for them.
 *
 * V = (ks of the thirstiest − cover-weighted mean of ks) · ETo of the year · area, gross as `grossVolume`. Rain covers a like share of both
 * and is left out, so that in rainy places it is an upper bound.
 *
 * @param zone - Plants, area, uniformity and the year's reference ET. [mm] and [m2]
 * @returns Litres of a year and the factors; null where needs match, or the thirsty ones are not few. [L]
 * @throws {DomainError} `PLANTS_OUT_OF_DOMAIN` when there are none, or a cover or factor is below zero; as `grossVolume`.
 */
export function mixedNeeds(zone: SharedZone): MixedNeeds | null {
  const { plants, etoOfYear, areaM2, duLq, leachingFraction } = zone;
  const cover = plants.reduce((sum, each) => sum + each.cover, 0);
  if (!(cover > 0 && plants.every((each) => each.cover >= 0 && each.plantFactor >= 0))) {
    throw new DomainError('PLANTS_OUT_OF_DOMAIN', { zoneId: zone.zoneId, cover });
  }
  const growing = plants.filter((each) => each.cover > 0);
  const thirstiestFactor = Math.max(...growing.map(({ plantFactor }) => plantFactor));
  const coverFactor = growing.reduce((sum, each) => sum + each.cover * each.plantFactor, 0) / cover;
  const leastFactor = Math.min(...growing.map(({ plantFactor }) => plantFactor));
  const thirstyCover =
    growing.filter(({ plantFactor }) => thirstiestFactor - plantFactor < LEAST_DIFFERENCE).reduce((sum, each) => sum + each.cover, 0) /
    cover;
  if (thirstiestFactor - leastFactor < LEAST_DIFFERENCE || thirstyCover > MOST_THIRSTY_COVER) return null;
  const depth = ((thirstiestFactor - coverFactor) * etoOfYear) as Quantity<'mm'>;
  return { litresPerYear: grossVolume(depth, { areaM2, duLq, leachingFraction }), thirstiestFactor, coverFactor, thirstyCover };
}

/**
 * Mixed water needs as something a person should look at.
 *
 * @param zone - The zone. [code]
 * @param mixed - What its thirsty plants cost. [L]
 * @param pricePerLitre - Price of water; null where it is not known. [any]
 * @param today - Local date, 'YYYY-MM-DD'. [code]
 * @returns The candidate: water and money of a month, a twelfth of the year's. [L]
 */
export function mixedNeedsFinding(zone: SharedZone, mixed: MixedNeeds, pricePerLitre: number | null, today: string): FindingCandidate {
  const key = `mixed water needs zone:${zone.zoneId}`;
  const litres = mixed.litresPerYear / 12;
  return {
    kind: 'mixed water needs',
    causeKey: key,
    causeFamily: key,
    meterId: null,
    controllerId: null,
    zoneIds: [zone.zoneId],
    fromDate: today,
    untilDate: today,
    litres,
    sdLitres: null,
    money: pricePerLitre === null ? null : litres * pricePerLitre,
    confidence: 1,
    evidence: { ...mixed, plants: zone.plants, etoOfYear: zone.etoOfYear },
    says: { code: 'mixed water needs', details: { zoneId: zone.zoneId, litresPerYear: mixed.litresPerYear } },
  };
}
