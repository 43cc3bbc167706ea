import { feltThirst } from '../demand/felt-thirst.js';
import { runOffMinutes } from '../demand/standing-water.js';
import { steadyWater } from '../demand/steady-water.kernel.js';
import type { ZoneToPlan } from '../plan-input.js';
import type { PlanWeights } from '../plan-weights.js';
import type { ZoneJudgement } from './plan-judgement.js';
import type { PlanRuns } from './plan-runs.js';

/** A zone judged, and what its water and waterings cost in the month. [L] */
export interface PricedZone {
  readonly zone: ZoneJudgement;
  readonly cost: number;
}

const written = new Float64Array(2);

/**
 * What runs do to a zone in a month of days like these.
 *
 * @param zone - The zone. [L/d] and [L/min]
 * @param runs - Runs of all stations over days that repeat. [min]
 * @param monthDays - Days of the month. [d]
 * @param weights - Prices. [–]
 * @returns Used, unmet, wasted and run off. [L]
 */
export function judgeZone(zone: ZoneToPlan, runs: PlanRuns, monthDays: number, weights: PlanWeights): PricedZone {
  const { flowLPerMin: flow, fillMinutes } = zone;
  const need = zone.needLitresPerDay / flow;
  const storage = zone.storageDays === null ? Number.POSITIVE_INFINITY : Math.max(1, zone.storageDays) * need;
  const byDay = runs.stations.get(zone.station) ?? [];
  const starts = runs.starts.get(zone.station) ?? [];
  const watered = new Float64Array(runs.days);
  let [used, filled, ranOff, waterings] = [0, 0, 0, 0];
  byDay.forEach((ofDay, day) => {
    const minutes = ofDay.reduce((sum, { begin, end }) => sum + end - begin, 0);
    if (minutes === 0) return;
    const off = runOffMinutes(
      [...ofDay].sort((a, b) => a.begin - b.begin),
      zone.intake,
    );
    const fill = Math.min(minutes - off, fillMinutes * (starts[day] ?? 0));
    watered[day] = minutes - off - fill;
    used += minutes;
    filled += fill;
    ranOff += off;
    waterings += 1;
  });
  steadyWater(new Uint8Array(runs.days).fill(1), watered, need, storage, written);
  const months = monthDays / runs.days;
  const [unmet, lost] = [written[0] as number, (written[1] as number) + filled + ranOff];
  return {
    zone: {
      zoneId: zone.zoneId,
      station: zone.station,
      usedLitres: used * flow * months,
      neededLitres: need * flow * monthDays,
      unmetLitres: unmet * flow * months,
      wastedLitres: lost * flow * months,
      ranOffLitres: ranOff * flow * months,
    },
    cost: months * (flow * (weights.thirst * feltThirst(unmet, need * runs.days) + weights.waste * lost) + weights.watering * waterings),
  };
}
