import { createHash } from 'node:crypto';
import { setImmediate } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import { type ControllerPlan, planController } from '@rillbook/irrigation/planning/offers/plan-controller.js';
import { type YearCard, yearCard } from '@rillbook/irrigation/planning/offers/year-card.js';
import type { PlanInput } from '@rillbook/irrigation/planning/plan-input.js';

/** What the thread is asked: a month, or the months of a card. */
export interface PlanQuestion {
  readonly month: PlanInput | null;
  readonly year: readonly PlanInput[] | null;
}

/** What the thread found, or what it failed with. */
export interface PlanAnswer {
  readonly plan: ControllerPlan | null;
  readonly card: YearCard | null;
  readonly error: Error | null;
}

/** Answers that are kept; the one that was asked for longest ago goes first. */
const MOST_KEPT = 400;

/** The built file: source that is run as it is has none, and plans in its own thread. */
const FILE = import.meta.url.endsWith('.js') ? new URL('./planning-thread.js', import.meta.url) : null;

interface Waiting {
  readonly told: (answer: PlanAnswer) => void;
  readonly failed: (error: Error) => void;
}

interface Kept {
  readonly answer: Promise<PlanAnswer>;
  isThere: boolean;
}

/** Plans in a thread of its own, and keeps what was found: the same question has the same answer. */
export class Planner {
  private readonly kept = new Map<string, Kept>();
  private readonly waiting: Waiting[] = [];
  private worker: Worker | null = null;

  constructor(private readonly mostKept = MOST_KEPT) {}

  /** A controller's month. */
  async plan(month: PlanInput): Promise<ControllerPlan> {
    return (await this.answer({ month, year: null })).plan!;
  }

  /** A controller's year; null where no month is given. */
  async card(year: readonly PlanInput[]): Promise<YearCard | null> {
    return (await this.answer({ month: null, year })).card;
  }

  /** Whether the answer is there: then nobody waits for it. */
  knows(question: PlanQuestion): boolean {
    return this.kept.get(keyOf(question))?.isThere ?? false;
  }

  private answer(question: PlanQuestion): Promise<PlanAnswer> {
    const key = keyOf(question);
    const kept = this.kept.get(key) ?? this.keep(key, question);
    this.kept.delete(key);
    this.kept.set(key, kept);
    for (const oldest of [...this.kept.keys()].slice(0, Math.max(0, this.kept.size - this.mostKept))) this.kept.delete(oldest);
    return kept.answer;
  }

  private keep(key: string, question: PlanQuestion): Kept {
    const kept: Kept = { answer: this.asked(question), isThere: false };
    kept.answer.then(
      () => (kept.isThere = true),
      () => this.kept.delete(key),
    );
    return kept;
  }

  private async asked(question: PlanQuestion): Promise<PlanAnswer> {
    const { plan, card, error } = FILE ? await this.inThread(FILE, question) : await here(question);
    if (error) throw error;
    return { plan, card, error };
  }

  private inThread(file: URL, question: PlanQuestion): Promise<PlanAnswer> {
    const worker = (this.worker ??= this.started(file));
    return new Promise((told, failed) => {
      worker.postMessage(question);
      worker.ref();
      this.waiting.push({ told, failed });
    });
  }

  private started(file: URL): Worker {
    const worker = new Worker(file);
    worker.on('message', (answer: PlanAnswer) => {
      this.waiting.shift()!.told(answer);
      // A thread with nothing to do keeps nobody from ending.
      if (!this.waiting.length) worker.unref();
    });
    const end = (error: Error) => {
      if (this.worker === worker) this.worker = null;
      for (const { failed } of this.waiting.splice(0)) failed(error);
    };
    worker.on('error', end);
    worker.on('exit', () => end(new Error('the planning thread has ended')));
    return worker;
  }
}

const keyOf = (question: PlanQuestion): string => createHash('sha256').update(JSON.stringify(question)).digest('base64');

async function here({ month, year }: PlanQuestion): Promise<PlanAnswer> {
  await setImmediate();
  return { plan: month && planController(month), card: year && yearCard(year), error: null };
}

/** The planner of this process. */
export const planner = new Planner();
