import type { TravelTable } from '../travel/travel-table.js';

/** A stretch of a day. [s since the day began, local] */
export interface TimeWindow {
  readonly opensS: number;
  readonly closesS: number;
}

/** A property that somebody should go to, once. */
export interface PlanStop {
  readonly id: string;
  /** Row of the travel table; null where the position is not known, which leaves the stop unplaced with that reason. */
  readonly place: number | null;
  /** Time the work takes; by crew where crews differ. [s] */
  readonly serviceS: number | Readonly<Record<string, number>>;
  /** What it takes of a crew day's `mostLoad`; 1 counts stops. [any] */
  readonly load: number;
  /** What somebody of the crew must be able to do. */
  readonly skills: readonly string[];
  /** When the property may be visited: windows for every day, or windows by day number; a day without an entry is not open. null: always. */
  readonly windows: readonly TimeWindow[] | Readonly<Record<number, readonly TimeWindow[]>> | null;
  /** Whether the whole work must lie within a window, as with a gate, or only its begin. */
  readonly wholeWorkInside: boolean;
  /** First and last day on which it may be done; null: no bound. [day number] */
  readonly firstDay: number | null;
  readonly lastDay: number | null;
  /** The day that would be best, and what each day off it costs, as driving time. [day number], [s] */
  readonly wantedDay: number | null;
  readonly perDayOffS: number;
  /** What leaving it out costs, as driving time: the more urgent the more. [s] */
  readonly leaveOutS: number;
  /** The crew day that it stays on, with its place among the locked ones of that day; null: free. */
  readonly locked: { readonly crewDayId: string; readonly position: number } | null;
}

/** One crew on one day. */
export interface CrewDay {
  readonly id: string;
  readonly crewId: string;
  /** [day number] */
  readonly day: number;
  readonly skills: readonly string[];
  /** Rows of the travel table where the day starts and ends; null: wherever the first or last stop is. */
  readonly startPlace: number | null;
  readonly endPlace: number | null;
  /** When the crew may leave and must be back. [s since the day began] */
  readonly opensS: number;
  readonly closesS: number;
  /** The most work and driving of the day, waiting not counted. [s] */
  readonly mostBusyS: number;
  readonly mostLoad: number;
  /** What sending the crew out at all costs, as driving time. [s] */
  readonly goingOutS: number;
}

/** What a plan is made from. */
export interface PlanInput {
  readonly travel: TravelTable;
  readonly stops: readonly PlanStop[];
  readonly crewDays: readonly CrewDay[];
  /** How much an even spread of work is worth: 0 drives least, 0.1 evens out where that costs little driving. [–] */
  readonly evenness: number;
}

/** Stops by crew day, in the order of driving, and those that found no place: indices into the input's stops. */
export interface Assignment {
  readonly routes: readonly (readonly number[])[];
  readonly unplaced: readonly number[];
}
