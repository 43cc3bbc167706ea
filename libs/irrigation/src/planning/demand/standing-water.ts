import type { ZoneIntake } from '../plan-input.js';

const MINUTES_PER_HOUR = 60;

/** Runs of one valve in order of time. [min] */
export interface ValveRun {
  readonly begin: number;
  readonly end: number;
}

/**
 * Minutes of water that run off when a valve runs as given: what stands on the ground grows by PR − IR, sinks in between by IR, and what would
 * stand above ASA runs off.
 *
 * @param runs - The runs, in order of time. [min]
 * @param intake - Rate of the zone, intake and accumulation of its soil; null is no limit. [mm/h] and [mm]
 * @returns Run-off in minutes of the zone's flow. [min]
 * @source The storage picture behind the Irrigation Association's (2005) cycle limit RTmax = 60 · ASA / (PR − IR): one run of RTmax from dry
 * ground stands exactly at ASA.
 */
export function runOffMinutes(runs: readonly ValveRun[], intake: ZoneIntake | null): number {
  if (intake === null || intake.precipitationRate <= intake.intakeRate) return 0;
  const [rate, taken] = [intake.precipitationRate / MINUTES_PER_HOUR, intake.intakeRate / MINUTES_PER_HOUR];
  let [standing, ranOff, last] = [0, 0, runs[0]?.begin ?? 0];
  for (const { begin, end } of runs) {
    standing = Math.max(0, standing - taken * (begin - last)) + (rate - taken) * (end - begin);
    ranOff += Math.max(0, standing - intake.surfaceAccumulation);
    standing = Math.min(standing, intake.surfaceAccumulation);
    last = end;
  }
  return ranOff / rate;
}
