// Invented controllers of up to 24 zones and 4 programs, planned one after the other: how far each can be from the best, how long it took, and
// whether what is given out keeps every rule and limit. The answer is measured; where it does not prove itself, the proof runs on. Times are of
// the processor, so that other work on the machine does not count. `npm run prove -- planning COUNT FIRST` plans another number than 200, or from
// another seed.
import { fullProgram, planGround } from '../../libs/irrigation/dist/planning/offers/full-program.js';
import { planController } from '../../libs/irrigation/dist/planning/offers/plan-controller.js';
import { judgePlan } from '../../libs/irrigation/dist/planning/judge/judge-plan.js';
import { keepsAll } from '../../libs/irrigation/dist/planning/judge/plan-judgement.js';
import { inventedController } from '../support/planning/controllers.mjs';

export const readsShared = false;

const GOOD_GAP = 0.01;
/** What a proof may look at. */
const FOR_A_PROOF = { work: 1e15, nodes: 3_000_000, visits: 200_000, looks: 3_000_000, layouts: 20_000 };
const share = (part, whole) => (whole > 0 ? part / whole : 0);
const at = (sorted, place) => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * place))];
const percent = (value) => `${(value * 100).toFixed(1)} %`;

function timed(work) {
  const begun = process.cpuUsage();
  const found = work();
  const { user, system } = process.cpuUsage(begun);
  return [found, (user + system) / 1000];
}

const timesIn = (all) =>
  `median ${at(all, 0.5).toFixed(0)} ms, 95th of 100 ${at(all, 0.95).toFixed(0)} ms, longest ${all.at(-1).toFixed(0)} ms, ${all.filter((ms) => ms > 500).length} above 500 ms`;

export async function prove([count = '200', first = '1']) {
  const gaps = [];
  const laidOut = [];
  const times = [];
  const waits = [];
  let atOnce = 0;
  for (let seed = Number(first); seed < Number(first) + Number(count); seed += 1) {
    const input = inventedController(seed);
    const [found, time] = timed(() => fullProgram(input));
    times.push(time);
    waits.push(timed(() => planController(input))[1]);
    if (found.bound > found.costBeforeLayout + 1e-6) throw new Error(`world ${seed}: the bound ${found.bound} is above the cost`);
    if (!keepsAll(judgePlan(input, found.programs))) throw new Error(`world ${seed}: a rule or limit is not kept`);
    const answered = share(found.costBeforeLayout - found.bound, found.costBeforeLayout);
    if (answered <= GOOD_GAP) atOnce += 1;
    const bound =
      answered <= GOOD_GAP ? found.bound : Math.max(found.bound, fullProgram(input, planGround(input), { ...FOR_A_PROOF }).bound);
    gaps.push(share(found.costBeforeLayout - bound, found.costBeforeLayout));
    laidOut.push(share(found.cost - bound, found.cost));
  }
  const good = (all) => percent(all.filter((gap) => gap <= GOOD_GAP).length / all.length);
  for (const all of [gaps, laidOut, times, waits]) all.sort((a, b) => a - b);
  return [
    `${count} controllers, seeds from ${first}: every rule and limit kept, every bound below its cost`,
    `gap of zones, programs, days and minutes at most 1 %: ${good(gaps)} (worst ${percent(gaps.at(-1))}); ${percent(atOnce / gaps.length)} with the answer`,
    `with starts and soaks fitted into the hours: ${good(laidOut)} (worst ${percent(laidOut.at(-1))})`,
    `processor time of the full program: ${timesIn(times)}`,
    `of the whole answer, with the least change and what is impossible: ${timesIn(waits)}`,
  ].join('\n');
}
