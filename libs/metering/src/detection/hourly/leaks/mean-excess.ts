import { valueAt } from '../steps/value-at.js';
import type { UsualSpread } from './usual-spread.js';

/** Litres of days that nothing explains and of their runs, where their sum left zero, and whether a day at rest has shown it; NaN is not known. */
interface Excess {
  readonly litres: Float64Array;
  readonly runLitres: Float64Array;
  readonly since: number;
  readonly atRest: boolean;
}

/**
 * The likeliest begin of a step of the mean: the cumulative sum itself may have left zero by chance before.
 *
 * argmax over k of Σ(k … day) excess / √(days); days at rest count where such a day has shown the excess.
 *
 * @param excess - What is followed. [L]
 * @param day - The newest day, from 0. [–]
 * @param spread - How litres that nothing explains usually are. [L]
 * @returns The day, from 0, none before the sum left zero. [–]
 * @source Maximum likelihood estimate of the time of a change: Hinkley (1970), Biometrika 57, 1–17; from memory.
 */
export function beganAt(excess: Excess, day: number, spread: UsualSpread): number {
  let [since, most, sum, days] = [day, 0, 0, 0];
  for (let past = day; past >= excess.since; past--) {
    const own = excessOf(excess, spread, past);
    const saysNothing = !excess.atRest && valueAt(excess.runLitres, past) <= 0;
    if (Number.isNaN(own) || saysNothing) continue;
    sum += own;
    days += 1;
    if (sum / Math.sqrt(days) > most) [since, most] = [past, sum / Math.sqrt(days)];
  }
  return since;
}

/**
 * Mean of the litres that nothing explains, by the days that are known.
 *
 * @param excess - What is followed. [L]
 * @param days - The days. [–]
 * @param days.since - The first, from 0. [–]
 * @param days.until - The last, from 0. [–]
 * @param spread - How litres that nothing explains usually are. [L]
 * @returns The mean and the number of days that are known, one at least. [L/d]
 */
export function meanExcess(
  excess: Pick<Excess, 'litres' | 'runLitres'>,
  { since, until }: { readonly since: number; readonly until: number },
  spread: UsualSpread,
): { readonly mean: number; readonly days: number } {
  const known: number[] = [];
  for (let day = since; day <= until; day++) known.push(excessOf(excess, spread, day));
  const told = known.filter((own) => !Number.isNaN(own));
  const sum = told.reduce((total, own) => total + own, 0);
  return { mean: told.length > 0 ? sum / told.length : 0, days: Math.max(1, told.length) };
}

function excessOf({ litres, runLitres }: Pick<Excess, 'litres' | 'runLitres'>, { target, runShare }: UsualSpread, day: number): number {
  return valueAt(litres, day) - target - runShare * valueAt(runLitres, day);
}
