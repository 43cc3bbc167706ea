import { DomainError } from '@rillbook/units/domain-error.js';
import { adjustedMinutes } from '../adjusted-minutes.js';
import type { ControllerTraits } from '../controller-traits.js';
import type { StationRun } from '../settings-fact.js';

/** A station's valve open for a time, in minutes after the start. */
export interface StationSegment {
  readonly station: number;
  readonly begin: number;
  readonly end: number;
}

/** Floating-point dust: a cycle this little above whole steps is not lengthened by one. */
const DUST = 1e-9;

/**
 * What one program start does: stations one after the other in their order, round after round of cycles.
 *
 * A station's minutes are split over its cycles and never multiplied; on a timer with a step each cycle is whole steps and the last one takes
 * what is left, so it may be short or not run. A cycle waits until its soak is over. A station set to more minutes than the timer holds is set
 * to the most it holds.
 *
 * @param stations - The program's stations in the order in which they run. [min], minutes per start at 100 %
 * @param percent - Percent in force. [%]
 * @param traits - Step and longest of the controller's run times; null does not round, or has no bound. [min]
 * @returns Segments in order of time, in minutes after the start; empty ones are left out. [min]
 * @throws {DomainError} `SETTINGS_OUT_OF_DOMAIN` when cycles are not a whole number above zero or a time is below zero.
 */
export function layOutStart(
  stations: readonly StationRun[],
  percent: number,
  traits: Pick<ControllerTraits, 'minuteStep' | 'maxMinutes'>,
): readonly StationSegment[] {
  const runs = stations.map((run) => ({ run, cycles: cyclesOf(run, percent, traits), ready: 0 }));
  const rounds = Math.max(0, ...runs.map(({ cycles }) => cycles.length));
  const segments: StationSegment[] = [];
  let now = 0;
  for (let round = 0; round < rounds; round += 1) {
    for (const each of runs) {
      const minutes = each.cycles[round] ?? 0;
      if (minutes <= 0) continue;
      const begin = Math.max(now, each.ready);
      now = begin + minutes;
      each.ready = now + each.run.soakMinutes;
      segments.push({ station: each.run.station, begin, end: now });
    }
  }
  return segments;
}

function cyclesOf(run: StationRun, percent: number, traits: Pick<ControllerTraits, 'minuteStep' | 'maxMinutes'>): readonly number[] {
  if (!(Number.isInteger(run.cycles) && run.cycles > 0 && run.soakMinutes >= 0)) {
    throw new DomainError('SETTINGS_OUT_OF_DOMAIN', { station: run.station, cycles: run.cycles, soakMinutes: run.soakMinutes });
  }
  const step = traits.minuteStep;
  const set = Math.min(run.minutes, traits.maxMinutes ?? Number.POSITIVE_INFINITY);
  const total = adjustedMinutes(set, percent, step);
  if (step === null) return new Array<number>(run.cycles).fill(total / run.cycles);
  const whole = Math.ceil(total / run.cycles / step - DUST) * step;
  return Array.from({ length: run.cycles }, (_, cycle) => Math.max(0, Math.min(whole, total - cycle * whole)));
}
