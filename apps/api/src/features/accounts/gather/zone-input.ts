import { densityFactor } from '@rillbook/agronomy/plants/density-factor.js';
import { establishment } from '@rillbook/agronomy/plants/establishment/establishment.js';
import { establishmentOfCover } from '@rillbook/agronomy/plants/establishment/establishment-of-cover.js';
import { youngDensityFactor, youngPlantFactor, youngRootDepth } from '@rillbook/agronomy/plants/establishment/young-plants.js';
import { managementAllowedDepletion } from '@rillbook/agronomy/plants/management-allowed-depletion.js';
import { plantFactor } from '@rillbook/agronomy/plants/plant-factor.js';
import { rootDepth } from '@rillbook/agronomy/plants/root-depth.js';
import { shadeFactor } from '@rillbook/agronomy/plants/shade-factor.js';
import { availableWater } from '@rillbook/agronomy/soil/available-water.js';
import { soilTexture } from '@rillbook/agronomy/soil/soil-texture.js';
import { readilyAvailableWater } from '@rillbook/agronomy/water-balance/root-zone/readily-available-water.js';
import { totalAvailableWaterOfSoil } from '@rillbook/agronomy/water-balance/root-zone/total-available-water.js';
import { defaultUniformity } from '@rillbook/irrigation/hardware/uniformity/default-uniformity.js';
import { flowFromPrecipitationRate } from '@rillbook/irrigation/hardware/precipitation/precipitation-rate.js';
import type { AccountZone, AssumedInput } from '@rillbook/metering/account/account-input.js';
import type { FlowSource } from '@rillbook/metering/uncertainty/default-relative-sd.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import type { ZoneFact } from './property-facts.js';

function flowOf(zone: ZoneFact): { flowLPerMin: number | null; flowSource: FlowSource } {
  if (zone.flowLPerMin !== null) return { flowLPerMin: zone.flowLPerMin, flowSource: zone.flowSource ?? 'assumed' };
  if (zone.precipMmPerH === null) return { flowLPerMin: null, flowSource: 'assumed' };
  return {
    flowLPerMin: flowFromPrecipitationRate(zone.precipMmPerH as Quantity<'mm/h'>, zone.areaM2 as Quantity<'m2'>),
    flowSource: 'derived',
  };
}

/** How far the plants of a zone have come at the beginning of a month, 1 being established; a zone without dates is. */
function establishedShare(zone: ZoneFact, month: string | null): number {
  if (month === null) return 1;
  // What is planted within the month is there from its day on.
  const shareOf = (plantedOn: string | null): number =>
    establishment(zone.plants, plantedOn, plantedOn?.startsWith(month) ? plantedOn : `${month}-01`)?.share ?? 1;
  if (zone.establishedOn !== null) return shareOf(zone.establishedOn);
  return establishmentOfCover(zone.plantings.map(({ coverPercent, plantedOn }) => ({ coverPercent, share: shareOf(plantedOn) })));
}

/**
 * What the plants ask and what their roots can reach, young plants as documented in the library. A stated plant factor or density stands, for
 * whoever states it looked at the plants; a stated root depth is that of grown ones.
 */
function rootZoneOf(zone: ZoneFact, month: string | null) {
  const share = establishedShare(zone, month);
  const isYoung = share < 1;
  const factor = plantFactor(zone.plantFactor, zone.waterNeed, zone.plants);
  const density = densityFactor(zone.density);
  const roots = rootDepth(zone.rootDepthMm as Quantity<'mm'> | null, zone.plants);
  const soil = soilTexture(zone.soil);
  const tawMm = totalAvailableWaterOfSoil(availableWater(soil.texture), youngRootDepth(zone.plants, roots.rootDepth, share));
  const assumed: readonly (readonly [AssumedInput, boolean])[] = [
    ['plantFactor', factor.assumed && (zone.waterNeed === null || isYoung)],
    ['density', zone.density === null && isYoung],
    ['rawMm', roots.assumed || soil.assumed || isYoung],
  ];
  return {
    plantFactor: factor.assumed ? youngPlantFactor(zone.plants, factor.plantFactor, share) : factor.plantFactor,
    density: zone.density === null ? youngDensityFactor(zone.plants, density, share) : density,
    rawMm: readilyAvailableWater(managementAllowedDepletion(zone.plants), tawMm),
    tawMm,
    assumed: assumed.filter(([, isAssumed]) => isAssumed).map(([input]) => input),
    ...(isYoung && { establishedShare: share }),
  };
}

/**
 * A zone as the account takes it: what nobody stated takes its documented default, and is named as assumed.
 *
 * @param meterOf the meter that a zone's meter is counted with: a swapped meter is one with its successor
 * @param month 'YYYY-MM', by which its plants are young or grown; null takes them as grown
 */
export function zoneInput(zone: ZoneFact, meterOf: (meterId: string) => string, month: string | null): AccountZone {
  const { assumed, ...rootZone } = rootZoneOf(zone, month);
  // What a sprayed zone without a controller puts out is not known; its water is metered all the same.
  const hand = zone.method === 'hand' || (zone.controllerId === null && zone.handLPerWeek !== null);
  return {
    id: zone.id,
    name: zone.name,
    meterId: zone.unmetered ? 'none' : zone.meterId && meterOf(zone.meterId),
    handWatered: hand,
    handLitresPerWeek: zone.handLPerWeek,
    controllerId: zone.controllerId,
    station: zone.station,
    areaM2: zone.areaM2,
    ...rootZone,
    shade: shadeFactor(zone.sun),
    duLq: zone.duLq ?? defaultUniformity(zone.method).value,
    leachingFraction: zone.leachingFraction ?? 0,
    ...flowOf(zone),
    assumed: zone.duLq === null ? [...assumed, 'duLq'] : assumed,
  };
}

/** Water that zones need for a mm of reference ET when no rain falls. [L/mm] */
export const litresPerMmOf = (zones: readonly AccountZone[]): number =>
  zones.reduce((sum, zone) => sum + (zone.areaM2 * zone.plantFactor * zone.density * zone.shade) / (0.4 + 0.6 * zone.duLq), 0);
