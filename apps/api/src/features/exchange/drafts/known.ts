import type { VolumeUnit } from '@rillbook/units/volume.js';

/** What the organization already has, by name, as far as files may refer to it. Plain data: read it once before the import. */
export interface Known {
  /** The time zone of properties that give none. IANA name. */
  readonly timeZone: string;
  readonly clients: Iterable<string>;
  readonly stations: Iterable<string>;
  /** The height above the sea of stations where it is known. [m] */
  readonly stationElevationsM?: ReadonlyMap<string, number>;
  readonly suppliers: Iterable<string>;
  readonly properties: Iterable<KnownProperty>;
  readonly meters: Iterable<KnownMeter>;
  readonly controllers: Iterable<KnownController>;
  readonly zones: Iterable<KnownZone>;
}

/** A property that files may name. */
export interface KnownProperty {
  readonly property: string;
  readonly timeZone: string;
}

/** A meter that files may name; its unit is that of usage and bills that give none. */
export interface KnownMeter {
  readonly property: string;
  readonly meter: string;
  readonly unit: VolumeUnit;
  /** What its register is multiplied by; 1 where that is not said. */
  readonly multiplier?: number;
}

/** A controller that files may name, and what it can hold. */
export interface KnownController {
  readonly property: string;
  readonly controller: string;
  readonly stations: number;
  readonly startsPerProgram: number | null;
  readonly maxMinutes: number | null;
  /** The most that its percent adjust can be set to. [%] */
  readonly maxAdjustPercent: number | null;
  readonly adjustScope: 'controller' | 'program' | null;
}

/** A zone that files may name. */
export interface KnownZone {
  readonly property: string;
  readonly zone: string;
}

/** An organization that has nothing yet. */
export function nothingKnown(timeZone: string): Known {
  return { timeZone, clients: [], stations: [], suppliers: [], properties: [], meters: [], controllers: [], zones: [] };
}
