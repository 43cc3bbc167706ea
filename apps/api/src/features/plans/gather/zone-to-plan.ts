import { allowableSurfaceAccumulation } from '@rillbook/agronomy/soil/allowable-surface-accumulation.js';
import { basicIntakeRate } from '@rillbook/agronomy/soil/basic-intake-rate.js';
import type { SoilTexture } from '@rillbook/agronomy/soil/soil-texture.js';
import type { IrrigationMethod } from '@rillbook/irrigation/hardware/irrigation-method.js';
import { precipitationRateFromFlow } from '@rillbook/irrigation/hardware/precipitation/precipitation-rate.js';
import type { ZoneIntake, ZoneToPlan } from '@rillbook/irrigation/planning/plan-input.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import type { ZoneNeed } from '../../accounts/needs/need-of-month.service.js';

/** What a plan asks of a zone besides its need. */
export interface ZoneOnRecord {
  readonly id: string;
  readonly station: number;
  readonly plants: string | null;
  readonly method: IrrigationMethod;
  readonly areaM2: number;
  readonly precipMmPerH: number | null;
  readonly soil: SoilTexture | null;
  readonly slopePercent: number | null;
  readonly fillMinutes: number | null;
}

/** Water that drips or seeps goes in as slowly as it comes. */
const SEEPING: readonly IrrigationMethod[] = ['drip', 'subsurface drip'];
/** Where nobody has said, the ground is taken as flat. */
const FLAT = 0;
/** Where nobody has said, the line is taken as full when the valve opens. */
const FULL_AT_ONCE = 0;

/** A zone as the plan takes it; null where its flow is not known. */
export function zoneToPlan(zone: ZoneOnRecord, need: ZoneNeed): ZoneToPlan | null {
  const { flowLPerMin, rawMm } = need.zone;
  if (flowLPerMin === null || flowLPerMin <= 0) return null;
  const { id: zoneId, station, plants, method } = zone;
  return {
    ...{ zoneId, station, plants, method, flowLPerMin },
    needLitresPerDay: need.litresPerDay,
    storageDays: need.useMmPerDay > 0 ? rawMm / need.useMmPerDay : null,
    intake: intakeOf(zone, flowLPerMin),
    fillMinutes: zone.fillMinutes ?? FULL_AT_ONCE,
  };
}

// Only a soil that somebody looked at bounds the cycles: the default texture would make cycles up.
function intakeOf(zone: ZoneOnRecord, flowLPerMin: number): ZoneIntake | null {
  if (zone.soil === null || SEEPING.includes(zone.method)) return null;
  const rate = zone.precipMmPerH ?? precipitationRateFromFlow(flowLPerMin as Quantity<'L/min'>, zone.areaM2 as Quantity<'m2'>);
  return {
    precipitationRate: rate as Quantity<'mm/h'>,
    intakeRate: basicIntakeRate(zone.soil),
    surfaceAccumulation: allowableSurfaceAccumulation(zone.soil, zone.slopePercent ?? FLAT),
  };
}
