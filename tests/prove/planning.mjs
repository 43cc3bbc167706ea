// Invented controllers of up to 24 zones and 4 programs, planned one after the other: how far each can be from the best, how long it took, and
// whether what is given out keeps every rule and limit. `npm run prove -- planning COUNT` plans another number than 200.
import { fullProgram } from '../../libs/irrigation/dist/planning/offers/full-program.js';
import { judgePlan } from '../../libs/irrigation/dist/planning/judge/judge-plan.js';
import { keepsAll } from '../../libs/irrigation/dist/planning/judge/plan-judgement.js';
import { inventedController } from '../support/planning/controllers.mjs';

export const readsShared = false;

const GOOD_GAP = 0.01;
const share = (part, whole) => (whole > 0 ? part / whole : 0);
const at = (sorted, place) => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * place))];
const percent = (value) => `${(value * 100).toFixed(1)} %`;

export async function prove([count = '200']) {
  const gaps = [];
  const laidOut = [];
  const times = [];
  for (let seed = 1; seed <= Number(count); seed += 1) {
    const input = inventedController(seed);
    const begun = performance.now();
    const found = fullProgram(input);
    times.push(performance.now() - begun);
    if (found.bound > found.costBeforeLayout + 1e-6) throw new Error(`world ${seed}: the bound ${found.bound} is above the cost`);
    if (!keepsAll(judgePlan(input, found.programs))) throw new Error(`world ${seed}: a rule or limit is not kept`);
    gaps.push(share(found.costBeforeLayout - found.bound, found.costBeforeLayout));
    laidOut.push(share(found.cost - found.bound, found.cost));
  }
  const good = (all) => percent(all.filter((gap) => gap <= GOOD_GAP).length / all.length);
  for (const all of [gaps, laidOut, times]) all.sort((a, b) => a - b);
  return [
    `${count} controllers, seeds from 1: every rule and limit kept, every bound below its cost`,
    `gap of zones, programs, days and minutes at most 1 %: ${good(gaps)} (worst ${percent(gaps.at(-1))})`,
    `with starts and soaks fitted into the hours: ${good(laidOut)} (worst ${percent(laidOut.at(-1))})`,
    `time: median ${at(times, 0.5).toFixed(0)} ms, 95th of 100 ${at(times, 0.95).toFixed(0)} ms, longest ${times.at(-1).toFixed(0)} ms`,
  ].join('\n');
}
