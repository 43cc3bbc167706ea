import type { Program } from '../../settings/settings-fact.js';
import type { PlanInput } from '../plan-input.js';
import type { BrokenLimit } from './plan-judgement.js';
import type { PlanRuns } from './plan-runs.js';

const DUST = 1e-6;

/**
 * Limits of timer, window, meter and main that programs do not keep; what nobody knows limits nothing.
 *
 * @param input - The controller. [code]
 * @param programs - The programs. [code]
 * @param runs - Their runs. [min]
 * @param late - Whether anything runs outside the hours. [–]
 * @returns The limits, each once. [code]
 */
export function brokenLimits(input: PlanInput, programs: readonly Program[], runs: PlanRuns, late: boolean): readonly BrokenLimit[] {
  const { traits } = input;
  const most = (limit: number | null) => limit ?? Number.POSITIVE_INFINITY;
  const stations = programs.flatMap((program) => program.stations);
  const broken: readonly (readonly [BrokenLimit, boolean])[] = [
    ['more programs than it holds', programs.length > most(traits.programs)],
    ['more starts than it holds', programs.some(({ starts }) => new Set(starts).size > most(traits.startsPerProgram))],
    ['minutes above the longest', stations.some(({ minutes }) => minutes > most(traits.maxMinutes) + DUST)],
    ['percent above the largest', programs.some(({ adjustPercent }) => adjustPercent > most(traits.maxAdjustPercent))],
    ['stations it has not', stations.some(({ station }) => station > most(traits.stations))],
    ['more flow than meter and main carry', input.flowLimitLPerMin !== null && largestFlow(input, runs) > input.flowLimitLPerMin + DUST],
    ['outside the hours', late],
  ];
  return broken.flatMap(([limit, isBroken]) => (isBroken ? [limit] : []));
}

function largestFlow({ zones }: PlanInput, { all }: PlanRuns): number {
  const flows = new Map(zones.map(({ station, flowLPerMin }) => [station, flowLPerMin]));
  const turns = all
    .flatMap(({ station, begin, end }) => [
      { at: begin, flow: flows.get(station) ?? 0 },
      { at: end, flow: -(flows.get(station) ?? 0) },
    ])
    .sort((a, b) => a.at - b.at || a.flow - b.flow);
  let [now, largest] = [0, 0];
  for (const { flow } of turns) {
    now += flow;
    largest = Math.max(largest, now);
  }
  return largest;
}
