import type { IrrigationMethod } from '@rillbook/irrigation/hardware/irrigation-method.js';
import type { Plants, Sun, WaterNeed } from '@rillbook/agronomy/plants/plant-words.js';
import type { SoilTexture } from '@rillbook/agronomy/soil/soil-texture.js';
import type { VolumeUnit } from '@rillbook/units/volume.js';

/** All that is on record of one property and enters its accounts. Volumes in litres, areas in m², depths in mm. */
export interface PropertyFacts {
  readonly property: PropertyFact;
  readonly zones: readonly ZoneFact[];
  readonly controllers: readonly ControllerFact[];
  readonly settings: readonly SettingsFactRow[];
  readonly pauses: readonly PauseFact[];
  readonly meters: readonly MeterFact[];
  readonly readings: readonly ReadingFact[];
  readonly usageDays: readonly UsageDayFact[];
  readonly bills: readonly BillFact[];
}

export interface PropertyFact {
  readonly id: string;
  readonly timeZone: string;
  readonly stationId: string | null;
  readonly supplierId: string | null;
  /** watering rules ask for its number */
  readonly address: string | null;
  readonly allowanceFrom: 'ordinance' | 'contract' | null;
  readonly allowanceEtaf: number | null;
  readonly allowanceLitresPerMonth: readonly number[] | null;
  readonly specialLandscapeAreaM2: number | null;
}

export interface ZoneFact {
  readonly id: string;
  readonly propertyId: string;
  readonly name: string;
  readonly controllerId: string | null;
  readonly station: number | null;
  readonly meterId: string | null;
  readonly unmetered: boolean;
  readonly areaM2: number;
  readonly plants: Plants | null;
  readonly waterNeed: WaterNeed | null;
  readonly plantFactor: number | null;
  readonly method: IrrigationMethod;
  readonly precipMmPerH: number | null;
  readonly flowLPerMin: number | null;
  readonly flowSource: 'measured' | 'nameplate' | 'assumed' | null;
  readonly handLPerWeek: number | null;
  readonly duLq: number | null;
  readonly soil: SoilTexture | null;
  readonly sun: Sun | null;
  readonly density: number | null;
  readonly rootDepthMm: number | null;
  readonly leachingFraction: number | null;
  /** the day on which the zone was planted, YYYY-MM-DD */
  readonly establishedOn: string | null;
  readonly plantings: readonly PlantingFact[];
}

/** What stands in a zone, as far as it says how long it has stood there. */
export interface PlantingFact {
  readonly waterNeed: WaterNeed | null;
  readonly coverPercent: number | null;
  readonly plantedOn: string | null;
}

export interface ControllerFact {
  readonly id: string;
  readonly propertyId: string;
  readonly stations: number;
  readonly programs: number | null;
  readonly startsPerProgram: number | null;
  readonly maxMinutes: number | null;
  readonly minuteStep: number | null;
  readonly adjustScope: 'controller' | 'program' | null;
  readonly adjustStepPercent: number | null;
  readonly maxAdjustPercent: number | null;
  readonly monthlyAdjustPercent: readonly number[] | null;
  readonly runsAtOnce: number | null;
  readonly cycleSoak: boolean | null;
  readonly rainSensor: boolean | null;
  readonly rainSensorMm: number | null;
}

/** One settings fact as kept; `localTime` is the property's wall time. */
export interface SettingsFactRow {
  readonly controllerId: string;
  readonly propertyId: string;
  readonly localTime: string;
  readonly record: 'found' | 'left' | 'planned';
  readonly state: 'on' | 'off' | 'weather' | 'unknown';
  readonly programs: readonly KeptProgram[];
}

/** A program as the settings row keeps it: words and clock times as in the import folder. */
export interface KeptProgram {
  readonly name: string;
  readonly days: string;
  readonly starts: readonly string[];
  readonly adjustPercent: number | null;
  readonly stations: readonly {
    readonly station: number;
    readonly minutes: number;
    readonly cycles: number | null;
    readonly soakMinutes: number | null;
  }[];
}

export interface PauseFact {
  readonly controllerId: string;
  readonly propertyId: string;
  readonly from: string;
  readonly until: string | null;
}

export interface MeterFact {
  readonly id: string;
  readonly propertyId: string;
  readonly name: string;
  readonly kind: 'irrigation' | 'mixed';
  readonly water: string | null;
  readonly sizeMm: number | null;
  readonly unit: VolumeUnit;
  readonly multiplier: number;
  readonly digits: number | null;
  readonly resolution: number | null;
  readonly indoorLPerDay: number | null;
  readonly pricePerUnit: number | null;
  readonly installedOn: string | null;
  readonly firstRegister: number | null;
  readonly removedOn: string | null;
  readonly lastRegister: number | null;
}

/** `localDay` is the day number since 1970-01-01 on the property's calendar plus the elapsed share of that day. */
export interface ReadingFact {
  readonly id: string;
  readonly meterId: string;
  readonly propertyId: string;
  readonly localDay: number;
  readonly readAt: Date;
  readonly register: number;
}

export interface UsageDayFact {
  readonly meterId: string;
  readonly propertyId: string;
  readonly dayNumber: number;
  readonly daySeconds: number;
  readonly startSeconds: readonly number[];
  readonly lengthSeconds: readonly number[];
  readonly volumes: readonly number[];
  readonly unit: VolumeUnit;
}

export interface BillFact {
  readonly meterId: string;
  readonly propertyId: string;
  readonly startDay: number;
  readonly endDay: number;
  readonly litres: number;
}
