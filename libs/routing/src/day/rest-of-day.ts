import { DomainError } from '@rillbook/units/domain-error.js';
import type { CrewDay } from '../plan/plan-input.js';

/** Where a day stands that did not go as planned. */
export interface BrokenDay {
  /** The time now. [s since the day began] */
  readonly nowS: number;
  /** Row of the travel table where the crew is; null where nobody knows. */
  readonly place: number | null;
  /** Work and driving done. [s] */
  readonly doneS: number;
  readonly doneLoad: number;
}

/**
 * What is left of a crew's day from now on: it starts where the crew is, with the hours that remain.
 *
 * @param day - The day as it was to be. [–]
 * @param broken - Where it stands. [s]
 * @returns The rest as a crew day of its own. [s]
 * @throws {DomainError} `BROKEN_DAY_OUT_OF_DOMAIN` when a time is not finite or what is done is below zero.
 */
export function restOfDay(day: CrewDay, broken: BrokenDay): CrewDay {
  const { nowS, place, doneS, doneLoad } = broken;
  if (!(Number.isFinite(nowS) && doneS >= 0 && doneLoad >= 0 && Number.isFinite(doneS + doneLoad))) {
    throw new DomainError('BROKEN_DAY_OUT_OF_DOMAIN', { nowS, doneS, doneLoad });
  }
  return {
    ...day,
    startPlace: place,
    opensS: Math.max(day.opensS, nowS),
    mostBusyS: Math.max(0, day.mostBusyS - doneS),
    mostLoad: Math.max(0, day.mostLoad - doneLoad),
    goingOutS: 0,
  };
}
