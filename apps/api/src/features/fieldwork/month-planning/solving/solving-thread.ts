import { parentPort, workerData } from 'node:worker_threads';
import type { PlanInput } from '@rillbook/routing/plan/plan-input.js';
import { solvePlan } from '@rillbook/routing/plan/solve-plan.js';
import { seededRandom } from '@rillbook/routing/random-source.js';
import { budgetOfSeconds } from './budget-of-seconds.js';

/** Runs in a worker: one plan, and then it ends. */
const { input, seconds, seed } = workerData as { readonly input: PlanInput; readonly seconds: number; readonly seed: number };
parentPort?.postMessage(solvePlan(input, seededRandom(seed), budgetOfSeconds(seconds)));
