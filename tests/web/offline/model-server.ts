import type { Operation, Verdict } from '../../../apps/web/src/offline/operation.js';

interface Kept {
  readonly body: string;
  readonly verdict: Verdict & { readonly key: string };
}

/** A visit with those who came, by the names of their arrivals, and whether something was done there. */
interface Visited {
  readonly standing: Set<string>;
  isWorked: boolean;
}

/** The server as the rules want it: the journal and the effect share one fate, and a key has one effect. */
export class ModelServer {
  /** keys of operations against which somebody else had said something: what the office sees */
  readonly conflicts = new Set<string>();
  private readonly journal = new Map<string, Kept>();
  private readonly done = new Map<string, number>();
  private readonly pictures = new Map<string, number>();
  private readonly values = new Map<number, { value: number; by: string }>();

  private readonly visits = new Map<string, Visited>();
  /** the stop of each arrival */
  private readonly stops = new Map<string, string>();

  constructor(private readonly forgets: boolean) {}

  take(batch: readonly Operation[]): (Verdict & { readonly key: string })[] {
    return batch.map((one) => this.takeOne(one));
  }

  isVisited(stop: string): boolean {
    const visit = this.visits.get(stop);
    return visit !== undefined && (visit.isWorked || visit.standing.size > 0);
  }

  /** Somebody in the office decides otherwise. */
  edit(subject: number, value: number): void {
    this.values.set(subject, { value, by: 'office' });
  }

  keepPicture(key: string): void {
    if (!this.journal.has(key)) throw new Error(`the picture of ${key} came before its words`);
    this.pictures.set(key, 1);
  }

  bodyOf(key: string): string | undefined {
    return this.journal.get(key)?.body;
  }

  judge(): void {
    for (const [key, times] of this.done) if (times !== 1) throw new Error(`${key} was done ${times} times`);
  }

  private takeOne({ key, body, kind, words }: Operation): Verdict & { readonly key: string } {
    const before = this.forgets ? undefined : this.journal.get(key);
    if (before && before.body !== body) {
      const problem = { code: 'OPERATION_CONFLICT', message: `${kind} ${words}` };
      return { key, verdict: 'conflict', problem, other: null };
    }
    // What was refused is tried again: its reason may be gone.
    if (before && before.verdict.verdict !== 'refused') return before.verdict;
    const said = kind === 'note' ? this.apply(key, body) : this.applyAtStop(key, kind, body);
    if (said !== 'refused') this.done.set(key, (this.done.get(key) ?? 0) + 1);
    const verdict = { key, verdict: said, problem: null, other: null };
    this.journal.set(key, { body, verdict });
    return verdict;
  }

  private applyAtStop(key: string, kind: string, body: string): 'applied' | 'refused' {
    const { stopId, visitId = '' } = JSON.parse(body) as { stopId?: string; visitId?: string };
    if (kind === 'arrive' && stopId) return this.arrive(key, stopId);
    const visit = this.visits.get(this.stops.get(visitId) ?? '');
    if (!visit) return 'refused';
    if (kind === 'work') visit.isWorked = true;
    else visit.standing.delete(visitId);
    return 'applied';
  }

  private arrive(key: string, stop: string): 'applied' {
    const visit = this.visits.get(stop) ?? { standing: new Set<string>(), isWorked: false };
    visit.standing.add(key);
    this.visits.set(stop, visit);
    this.stops.set(key, stop);
    return 'applied';
  }

  private apply(key: string, body: string): 'applied' | 'conflict' {
    const { subject, value } = JSON.parse(body) as { subject?: number; value?: number };
    if (subject === undefined || value === undefined) return 'applied';
    const present = this.values.get(subject);
    this.values.set(subject, { value, by: key });
    if (present?.by !== 'office' || present.value === value) return 'applied';
    this.conflicts.add(key);
    return 'conflict';
  }
}
