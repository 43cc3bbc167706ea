import { availableParallelism } from 'node:os';
import { setFlagsFromString } from 'node:v8';
import { Worker } from 'node:worker_threads';
import { AccountsComputed } from '../accounts-computed.event.js';
import type { ThreadBatch, ThreadMonths, ThreadWork } from './computing-thread.js';
import type { PropertyMonths, PropertyWork } from './property-months.js';

/** Fewer properties are computed sooner than a thread is there. */
const LEAST_PROPERTIES = 200;

/** So many processors are enough to leave one to reading and writing; of fewer every one computes, and the job's own thread has its share. */
const PROCESSORS_TO_SPARE = 4;

/**
 * Most memory that a thread takes. The young part is kept small, as a property's inputs are let go as soon as its accounts stand; in less, what
 * is computed with is taken for something that stays, and the thread takes a fifth more time. A thread that needs more ends, and its
 * properties are computed in the job's own. [MB]
 */
const MEMORY = { maxYoungGenerationSizeMb: 32, maxOldGenerationSizeMb: 512 };

/**
 * By how much memory may grow until what was let go is looked for, while a large job goes on: its own choice is several times as much, and the
 * job then holds some 100 MB more in judging all anew; with 15 it holds 100 MB less, and takes a quarter more time. [%]
 */
const GROWTH = 60;
const OWN_CHOICE = 0;

const growBy = (percent: number): void => setFlagsFromString(`--heap-growing-percent=${percent}`);

/** The built file: source that is run as it is has none, and computes in its own thread. */
const FILE = import.meta.url.endsWith('.js') ? new URL('./computing-thread.js', import.meta.url) : null;

/** Is told what the thread found, or null where it has ended. */
type Waiting = (months: readonly ThreadMonths[] | null) => void;

/** One thread, which answers in the order in which it is asked. */
class ComputingThread {
  private readonly worker: Worker;
  private readonly stations = new Set<string>();
  private readonly waiting: Waiting[] = [];
  private hasEnded = false;

  constructor(file: URL) {
    this.worker = new Worker(file, { resourceLimits: MEMORY });
    this.worker.on('message', (months: readonly ThreadMonths[]) => this.waiting.shift()!(months));
    this.worker.on('error', (error) => this.end(error));
    this.worker.on('exit', () => this.end(null));
  }

  get asked(): number {
    return this.waiting.length;
  }

  compute(works: readonly PropertyWork[]): Promise<readonly ThreadMonths[] | null> {
    if (this.hasEnded) return Promise.resolve(null);
    const batch: ThreadBatch = { series: this.newSeries(works), works: works.map(asked) };
    this.worker.postMessage(batch);
    return new Promise((told) => this.waiting.push(told));
  }

  async close(): Promise<void> {
    await this.worker.terminate();
  }

  private newSeries(works: readonly PropertyWork[]): ThreadBatch['series'] {
    return works.flatMap(({ facts, eto }) => {
      const { stationId } = facts.property;
      if (!stationId || this.stations.has(stationId)) return [];
      this.stations.add(stationId);
      return [[stationId, eto.days] as const];
    });
  }

  private end(error: Error | null): void {
    this.hasEnded = true;
    if (error) process.emitWarning(error);
    for (const told of this.waiting.splice(0)) told(null);
  }
}

/** Threads that compute for one job: the job's own thread reads and writes meanwhile. */
export class ComputingThreads {
  private readonly threads: readonly ComputingThread[];

  private constructor(file: URL) {
    growBy(GROWTH);
    this.threads = Array.from({ length: this.count }, () => new ComputingThread(file));
  }

  /** Threads for a job of so many properties; null where they are too few. */
  static forJob(properties: number): ComputingThreads | null {
    return FILE && properties >= LEAST_PROPERTIES ? new ComputingThreads(FILE) : null;
  }

  readonly count = availableParallelism() < PROCESSORS_TO_SPARE ? availableParallelism() : availableParallelism() - 1;

  /** The accounts of some properties, in their order; null where the thread has ended: who computes them himself learns why. */
  async compute(works: readonly PropertyWork[]): Promise<PropertyMonths[] | null> {
    const idlest = this.threads.reduce((least, thread) => (thread.asked < least.asked ? thread : least));
    const found = await idlest.compute(works);
    return found && found.map((months, at) => answered(works[at]!, months));
  }

  async close(): Promise<void> {
    growBy(OWN_CHOICE);
    await Promise.all(this.threads.map((thread) => thread.close()));
  }
}

function asked({ facts, prices, today, judging, kept }: PropertyWork): ThreadWork {
  return {
    facts,
    tiers: prices.tiers,
    today,
    judging,
    // Copies: the bytes as they were read stand in a block with many others.
    kept: Array.from(kept, ([month, { version, packed, judged }]) => [month, version, copyOf(packed), copyOf(judged)] as const),
  };
}

const copyOf = (bytes: Buffer | null): Uint8Array | null => bytes && new Uint8Array(bytes);

function answered({ facts }: PropertyWork, found: ThreadMonths): PropertyMonths {
  const { standing, renewed, detailEnds, episodes, newest } = found;
  const details = Buffer.from(found.details.buffer);
  const rows = found.rows.map((row, at) => ({
    ...row,
    detail: details.subarray(detailEnds[at - 1] ?? 0, detailEnds[at]),
    judged: row.judged && Buffer.from(row.judged),
  }));
  return { standing, renewed, rows, event: new AccountsComputed(facts.property.id, facts.property.timeZone, episodes, newest) };
}
