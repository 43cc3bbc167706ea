import { densityFactor } from '@rillbook/agronomy/plants/density-factor.js';
import { managementAllowedDepletion } from '@rillbook/agronomy/plants/management-allowed-depletion.js';
import { plantFactor } from '@rillbook/agronomy/plants/plant-factor.js';
import { rootDepth } from '@rillbook/agronomy/plants/root-depth.js';
import { shadeFactor } from '@rillbook/agronomy/plants/shade-factor.js';
import { availableWater } from '@rillbook/agronomy/soil/available-water.js';
import { soilTexture } from '@rillbook/agronomy/soil/soil-texture.js';
import { defaultUniformity } from '@rillbook/irrigation/hardware/uniformity/default-uniformity.js';
import { flowFromPrecipitationRate } from '@rillbook/irrigation/hardware/precipitation/precipitation-rate.js';
import type { AccountZone, AssumedInput } from '@rillbook/metering/account/account-input.js';
import type { FlowSource } from '@rillbook/metering/uncertainty/default-relative-sd.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import type { ZoneFact } from './property-facts.js';

const MM_PER_M = 1000;

function flowOf(zone: ZoneFact): { flowLPerMin: number | null; flowSource: FlowSource } {
  if (zone.flowLPerMin !== null) return { flowLPerMin: zone.flowLPerMin, flowSource: zone.flowSource ?? 'assumed' };
  if (zone.precipMmPerH === null) return { flowLPerMin: null, flowSource: 'assumed' };
  return {
    flowLPerMin: flowFromPrecipitationRate(zone.precipMmPerH as Quantity<'mm/h'>, zone.areaM2 as Quantity<'m2'>),
    flowSource: 'derived',
  };
}

/**
 * A zone as the account takes it: what nobody stated takes its documented default, and is named as assumed.
 *
 * @param meterOf the meter that a zone's meter is counted with: a swapped meter is one with its successor
 */
export function zoneInput(zone: ZoneFact, meterOf: (meterId: string) => string): AccountZone {
  const factor = plantFactor(zone.plantFactor, zone.waterNeed, zone.plants);
  const roots = rootDepth(zone.rootDepthMm as Quantity<'mm'> | null, zone.plants);
  const soil = soilTexture(zone.soil);
  const tawMm = (availableWater(soil.texture) * roots.rootDepth) / MM_PER_M;
  const hand = zone.method === 'hand' || zone.controllerId === null;
  const flow = flowOf(zone);
  const assumed = (
    [
      ['plantFactor', factor.assumed && zone.waterNeed === null],
      ['rawMm', roots.assumed || soil.assumed],
      ['duLq', zone.duLq === null],
    ] satisfies [AssumedInput, boolean][]
  )
    .filter(([, isAssumed]) => isAssumed)
    .map(([input]) => input);
  return {
    id: zone.id,
    name: zone.name,
    meterId: zone.unmetered ? 'none' : zone.meterId && meterOf(zone.meterId),
    handWatered: hand,
    handLitresPerWeek: zone.handLPerWeek,
    controllerId: zone.controllerId,
    station: zone.station,
    areaM2: zone.areaM2,
    plantFactor: factor.plantFactor,
    density: densityFactor(zone.density),
    shade: shadeFactor(zone.sun),
    rawMm: managementAllowedDepletion(zone.plants) * tawMm,
    tawMm,
    duLq: zone.duLq ?? defaultUniformity(zone.method).value,
    leachingFraction: zone.leachingFraction ?? 0,
    ...flow,
    assumed,
  };
}

/** Water that zones need for a mm of reference ET when no rain falls. [L/mm] */
export const litresPerMmOf = (zones: readonly AccountZone[]): number =>
  zones.reduce((sum, zone) => sum + (zone.areaM2 * zone.plantFactor * zone.density * zone.shade) / (0.4 + 0.6 * zone.duLq), 0);
