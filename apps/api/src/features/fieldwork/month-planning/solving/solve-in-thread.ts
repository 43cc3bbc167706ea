import { Worker } from 'node:worker_threads';
import type { Assignment, PlanInput } from '@rillbook/routing/plan/plan-input.js';
import { solvePlan } from '@rillbook/routing/plan/solve-plan.js';
import { seededRandom } from '@rillbook/routing/random-source.js';
import { budgetOfRounds } from '@rillbook/routing/search-budget.js';

/** The same plan for the same material, as far as the clock lets it. */
const SEED = 1;

/** How long a plan may take: a moment for each stop. [s] */
const SECONDS_PER_STOP = 0.01;
const LEAST_SECONDS = 1;
const MOST_SECONDS = 8;

/** Rounds where no thread can be started: source that is run as it is has no built file. */
const ROUNDS = 400;

const FILE = import.meta.url.endsWith('.js') ? new URL('./solving-thread.js', import.meta.url) : null;

/** Solves a plan beside the thread that answers requests. A thread that fails is a fault of the product, and is thrown on. */
export function solveInThread(input: PlanInput): Promise<Assignment> {
  if (!FILE) return Promise.resolve(solvePlan(input, seededRandom(SEED), budgetOfRounds(ROUNDS)));
  const seconds = Math.min(MOST_SECONDS, Math.max(LEAST_SECONDS, SECONDS_PER_STOP * input.stops.length));
  const worker = new Worker(FILE, { workerData: { input, seconds, seed: SEED } });
  return new Promise((resolve, reject) => {
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.once('exit', (code) => reject(new Error(`the thread that plans ended with code ${code} before it had a plan`)));
  });
}
