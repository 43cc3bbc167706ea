import type { AssumedInput } from '../account/account-input.js';
import type { AccountNote } from '../account/month-account.js';
import type { Absence } from '../volumes/absence.js';

/** One zone of an account in columns: what its line and its inputs are named by. */
export interface ColumnZone {
  readonly id: string;
  readonly controllerId: string;
  readonly station: number;
  /** its flow was derived from precipitation rate and area */
  readonly isDerived: boolean;
  readonly assumed: readonly AssumedInput[];
  /** as in `AccountZone`; null where its plants are grown [–] */
  readonly establishedShare: number | null;
}

/** What the accounts of some months of a property have in common: its only meter, its controllers and its zones, in their order. */
export interface AccountFrame {
  readonly meterId: string;
  readonly controllerIds: readonly string[];
  readonly zones: readonly ColumnZone[];
}

/**
 * The month account of a property with one meter, of whose zones need and program are known: the same account as the objects of
 * `MonthAccount`, as numbers one after the other. `numbers` and `causes` are laid out as `columnPlaces` says.
 */
export interface AccountColumns {
  readonly frame: AccountFrame;
  readonly month: string;
  readonly firstDay: number;
  readonly days: number;
  readonly daysInMonth: number;
  readonly meteredThrough: string | null;
  /** why nothing is allowed; null where something is */
  readonly notAllowed: Absence | null;
  /** sets of programs that ran a zone, and the place of each zone's */
  readonly programSets: readonly (readonly string[])[];
  readonly programSet: Uint8Array;
  /** all but those of single zones */
  readonly notes: readonly AccountNote[];
  readonly numbers: Float64Array;
  readonly causes: Int16Array;
}

/** The uncertain inputs of one zone, in the order of their places. */
export const ZONE_INPUTS = ['area', 'uniformity', 'plantFactor', 'rootStorage', 'flow'] as const;

/**
 * The uncertain inputs that are no zone's, in the order of their places after those of all zones: first the weather's, then the meter's. After
 * them stands for each controller what is filled in where its settings are not known.
 */
export const OTHER_INPUTS = [
  'eto',
  'rain',
  'filledWeather',
  'meter',
  'registerResolution',
  'apportioning',
  'indoor',
  'filledReadings',
] as const;

/**
 * Where the numbers of an account in columns stand.
 *
 * Volumes (allowed, needed, programmed, metered) are litres, standard deviation and estimated share each; `over` and `under` follow. A gap is
 * litres, standard deviation and five shares of the variance, its causes are five places of inputs, -1 for none: first the property's five gaps
 * in the order of `Volumes`, then over and under of each controller. Of the zones each column stands on its own.
 *
 * @param zones - Number of zones. [–]
 * @param controllers - Number of controllers. [–]
 * @returns Places in `numbers` and the lengths. [–]
 */
export function columnPlaces(zones: number, controllers: number) {
  const gaps = GAPS_OF_PROPERTY + 2 * controllers;
  const zone = FIRST_GAP + GAP_NUMBERS * gaps;
  return {
    over: 12,
    under: 13,
    gaps: FIRST_GAP,
    needed: zone,
    neededSd: zone + zones,
    programmed: zone + 2 * zones,
    programmedSd: zone + 3 * zones,
    gapSd: zone + 4 * zones,
    runs: zone + 5 * zones,
    minutes: zone + 6 * zones,
    estimatedShare: zone + 7 * zones,
    length: zone + 8 * zones,
    causes: GAP_CAUSES * gaps,
  };
}

const GAPS_OF_PROPERTY = 5;
const FIRST_GAP = 14;

/** How many numbers and causes a gap has. */
export const [GAP_NUMBERS, GAP_CAUSES] = [7, 5] as const;
