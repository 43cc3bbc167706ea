import type { InputShare } from '../uncertainty/input-share.js';
import type { Absence } from '../volumes/absence.js';

/** One of the four volumes: litres, or null with its reason. `estimatedShare` is the share of it that was filled in, 0 to 1. */
export interface Volume {
  readonly litres: number | null;
  readonly sdLitres: number | null;
  readonly estimatedShare: number;
  readonly reason: Absence | null;
}

/**
 * A difference of two volumes, with its standard deviation from the inputs (a shared input once) and the five inputs that matter most, first.
 * `estimate` is why one of the two is an estimate: then the gap proves nothing about settings.
 */
export interface Gap {
  readonly litres: number | null;
  readonly sdLitres: number | null;
  readonly reason: Absence | null;
  readonly estimate: Absence | null;
  readonly inputs: readonly InputShare[];
}

/** P - N with over and under kept apart: litres = overLitres - underLitres. */
export interface SettingsGap extends Gap {
  readonly overLitres: number | null;
  readonly underLitres: number | null;
}

/** The four volumes and the gaps between them, of the property or of one meter. */
export interface Volumes {
  readonly allowed: Volume;
  readonly needed: Volume;
  readonly programmed: Volume;
  readonly metered: Volume;
  /** N - A. */
  readonly landscapeGap: Gap;
  /** P - N, summed from zones. */
  readonly settingsGap: SettingsGap;
  /** M - P. */
  readonly unexplainedGap: Gap;
  /** M - N, the plain question. */
  readonly meteredOverNeeded: Gap;
  /** M - A. */
  readonly meteredOverAllowed: Gap;
}

/** One meter's account; `meteredThrough` is the last local date up to which its intervals reach without a hole in the month. */
export interface MeterVolumes extends Volumes {
  readonly meterId: string;
  readonly meteredThrough: string | null;
}

/** Where a zone's water is counted. Only metered zones enter the identity. */
export type ZoneScope = 'metered' | 'unassigned' | 'unmetered' | 'hand';

/** One zone's line. Litres are null with the reason of the first volume that is absent. */
export interface ZoneLine {
  readonly zoneId: string;
  readonly scope: ZoneScope;
  readonly meterId: string | null;
  readonly controllerId: string | null;
  readonly station: number | null;
  readonly programs: readonly string[];
  readonly neededLitres: number | null;
  readonly neededSdLitres: number | null;
  readonly programmedLitres: number | null;
  readonly programmedSdLitres: number | null;
  readonly overLitres: number | null;
  readonly underLitres: number | null;
  readonly gapSdLitres: number | null;
  readonly runs: number | null;
  readonly minutes: number | null;
  readonly estimatedShare: number;
  /** Why programmed is an estimate; null where it was replayed. */
  readonly estimate: Absence | null;
  readonly reason: Absence | null;
}

/** One controller's over and under, each with its uncertainty and the zones that make it. */
export interface ControllerLine {
  readonly controllerId: string;
  readonly meterIds: readonly string[];
  readonly over: Gap;
  readonly under: Gap;
  readonly overZoneIds: readonly string[];
  readonly underZoneIds: readonly string[];
}

/** Something the reader of the account should know. */
export interface AccountNote {
  readonly code:
    | 'weather-starts-later'
    | 'input-assumed'
    | 'plants-establishing'
    | 'volume-estimated'
    | 'programmed-from-weather'
    | 'sources-contradict'
    | 'special-landscape-area-capped'
    | 'weather-missing-before-month'
    | 'weather-filled'
    | 'weather-rain-not-known'
    | 'weather-rain-from-neighbour';
  readonly details: Readonly<Record<string, string | number>>;
}

/** The month account: the four volumes of one property and month and the gaps between them, per meter and per zone. */
export interface MonthAccount {
  readonly month: string;
  readonly firstDate: string;
  /** The last date that the volumes cover; null when no day is complete. */
  readonly throughDate: string | null;
  readonly daysCovered: number;
  readonly daysInMonth: number;
  readonly property: Volumes;
  readonly meters: readonly MeterVolumes[];
  readonly controllers: readonly ControllerLine[];
  readonly zones: readonly ZoneLine[];
  readonly notes: readonly AccountNote[];
}
