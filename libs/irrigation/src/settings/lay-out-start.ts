import { DomainError } from '@rillbook/units/domain-error.js';
import { adjustedMinutes } from './adjusted-minutes.js';
import type { StationRun } from './settings-fact.js';

/** A station's valve open for a time, in minutes after the start. */
export interface StationSegment {
  readonly station: number;
  readonly begin: number;
  readonly end: number;
}

/**
 * What one program start does: stations one after the other in their order, round after round of cycles.
 *
 * A station's minutes are split over its cycles and never multiplied; a cycle waits until its soak is over.
 *
 * @param stations - The program's stations in the order in which they run. [min], minutes per start at 100 %
 * @param percent - Percent in force. [%]
 * @param minuteStep - Resolution of the controller's run times; null does not round. [min]
 * @returns Segments in order of time, in minutes after the start; empty ones are left out. [min]
 * @throws {DomainError} `SETTINGS_OUT_OF_DOMAIN` when cycles are not a whole number above zero or a time is below zero.
 */
export function layOutStart(stations: readonly StationRun[], percent: number, minuteStep: number | null): readonly StationSegment[] {
  const runs = stations.map((run) => ({ run, perCycle: minutesPerCycle(run, percent, minuteStep), ready: 0 }));
  const rounds = Math.max(0, ...stations.map((run) => run.cycles));
  const segments: StationSegment[] = [];
  let now = 0;
  for (let round = 0; round < rounds; round += 1) {
    for (const each of runs.filter(({ run, perCycle }) => run.cycles > round && perCycle > 0)) {
      const begin = Math.max(now, each.ready);
      now = begin + each.perCycle;
      each.ready = now + each.run.soakMinutes;
      segments.push({ station: each.run.station, begin, end: now });
    }
  }
  return segments;
}

function minutesPerCycle(run: StationRun, percent: number, minuteStep: number | null): number {
  if (!(Number.isInteger(run.cycles) && run.cycles > 0 && run.soakMinutes >= 0)) {
    throw new DomainError('SETTINGS_OUT_OF_DOMAIN', { station: run.station, cycles: run.cycles, soakMinutes: run.soakMinutes });
  }
  return adjustedMinutes(run.minutes, percent, minuteStep) / run.cycles;
}
