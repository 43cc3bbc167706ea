import type { IrrigationMethod } from '@rillbook/irrigation/hardware/irrigation-method.js';
import { defaultPrecipitationRate } from '@rillbook/irrigation/hardware/precipitation/default-precipitation-rate.js';
import { flowFromPrecipitationRate } from '@rillbook/irrigation/hardware/precipitation/precipitation-rate.js';
import type { AccountZone } from '@rillbook/metering/account/account-input.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import type { ZoneFact } from '../gather/property-facts.js';

/** Where a method has no typical rate, or nobody said which it is. */
const OTHERWISE: IrrigationMethod = 'spray';

/**
 * Zones with a flow that is typical of their method and area where none is on record, so that the course of what was programmed is known, its level
 * being learnt from the meter; null where every zone of a controller has its flow, or there are no zones. Never to be shown as a flow.
 */
export function withTypicalFlows(zones: readonly AccountZone[] | null, facts: readonly ZoneFact[]): readonly AccountZone[] | null {
  const lacking = (zone: AccountZone): boolean => zone.flowLPerMin === null && zone.controllerId !== null;
  if (!zones?.some(lacking)) return null;
  const methodOf = new Map(facts.map(({ id, method }) => [id, method]));
  return zones.map((zone) => (lacking(zone) ? { ...zone, flowLPerMin: typicalFlow(zone, methodOf.get(zone.id) ?? OTHERWISE) } : zone));
}

function typicalFlow({ areaM2 }: AccountZone, method: IrrigationMethod): number {
  const rate = (defaultPrecipitationRate(method) ?? defaultPrecipitationRate(OTHERWISE))!.value;
  return flowFromPrecipitationRate(rate as Quantity<'mm/h'>, areaM2 as Quantity<'m2'>);
}
