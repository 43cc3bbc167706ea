import { feltThirst } from '../demand/felt-thirst.js';
import type { ControllerTraits } from '../../settings/controller-traits.js';
import { layOutStart } from '../../settings/replay/lay-out-start.js';
import { percentInForce } from '../../settings/replay/percent-in-force.js';
import type { Program } from '../../settings/settings-fact.js';
import { runOffMinutes } from '../demand/standing-water.js';
import { steadyWater } from '../demand/steady-water.kernel.js';
import type { PlanInput, ZoneToPlan } from '../plan-input.js';
import type { PlanWeights } from '../plan-weights.js';

/** What a program's starts at a percent give a zone in a day: minutes through the valve, and those that reach the roots. [min] */
interface StartOfZone {
  readonly used: number;
  readonly reaching: number;
}

/** What one day of a program does to each of its zones; null where anything would run off. [min] */
export type DayOfProgram = readonly (StartOfZone & { readonly zone: ZoneToPlan })[] | null;

/**
 * What a day of a program gives its zones, all starts together.
 *
 * @param input - The controller and the month. [code]
 * @param traits - The timer in that month. [code]
 * @param program - The program as it would be set. [code]
 * @returns Minutes by zone, or null where anything would run off. [min]
 */
export function dayOfProgram(input: PlanInput, traits: ControllerTraits, program: Program): DayOfProgram {
  const month = Number(input.month.slice(5)) - 1;
  const segments = layOutStart(program.stations, percentInForce(program.adjustPercent, traits, month), traits);
  const starts = new Set(program.starts).size;
  const zones = input.zones.filter(({ station }) => program.stations.some((run) => run.station === station && run.minutes > 0));
  const given = zones.map((zone) => {
    const runs = segments.filter(({ station }) => station === zone.station);
    const used = runs.reduce((total, { begin, end }) => total + end - begin, 0);
    const filled = Math.min(used, zone.fillMinutes);
    return { zone, used: used * starts, reaching: (used - filled) * starts, runsOff: runOffMinutes(runs, zone.intake) > 1e-9 };
  });
  return given.some(({ runsOff }) => runsOff) ? null : given;
}

/**
 * Price of a program's zones in a month, where no other program waters them.
 *
 * @param day - What a day of it gives. [min]
 * @param gaps - Days from each of its waterings to the next. [d]
 * @param weights - Prices. [–]
 * @param days - Days of the month. [d]
 * @returns The price, infinite where anything would run off. [–]
 */
export function priceOfProgram(day: DayOfProgram, gaps: readonly number[], weights: PlanWeights, days: number): number {
  return day ? day.reduce((sum, start) => sum + priceOfZone(start.zone, start, gaps, { weights, days }), 0) : Number.POSITIVE_INFINITY;
}

const written = new Float64Array(2);

function priceOfZone(
  zone: ZoneToPlan,
  start: StartOfZone,
  gaps: readonly number[],
  { weights, days }: { readonly weights: PlanWeights; readonly days: number },
): number {
  const { thirst, waste, watering } = weights;
  const need = zone.needLitresPerDay / zone.flowLPerMin;
  const storage = zone.storageDays === null ? Number.POSITIVE_INFINITY : Math.max(1, zone.storageDays) * need;
  steadyWater(
    gaps,
    gaps.map(() => start.reaching),
    need,
    storage,
    written,
  );
  const round = gaps.reduce((sum, gap) => sum + gap, 0);
  const rounds = days / round;
  const lost = (written[1] as number) + (start.used - start.reaching) * gaps.length;
  const wetting = start.used > 0 ? watering * gaps.length : 0;
  return rounds * (zone.flowLPerMin * (thirst * feltThirst(written[0] as number, need * round) + waste * lost) + wetting);
}
