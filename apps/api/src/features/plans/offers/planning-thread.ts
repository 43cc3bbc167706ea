// A thread that plans: it is asked in turn, and knows no database.
import { parentPort } from 'node:worker_threads';
import { planController } from '@rillbook/irrigation/planning/offers/plan-controller.js';
import { yearCard } from '@rillbook/irrigation/planning/offers/year-card.js';
import type { PlanAnswer, PlanQuestion } from './planner.js';

function answerOf({ month, year }: PlanQuestion): PlanAnswer {
  try {
    return { plan: month && planController(month), card: year && yearCard(year), error: null };
  } catch (error) {
    return { plan: null, card: null, error: error instanceof Error ? error : new Error(String(error)) };
  }
}

parentPort!.on('message', (question: PlanQuestion) => parentPort!.postMessage(answerOf(question)));
