import type { Operation, Verdict } from '../../../apps/web/src/offline/operation.js';

interface Kept {
  readonly body: string;
  readonly verdict: Verdict & { readonly key: string };
}

/** The server as the rules want it: the journal and the effect share one fate, and a key has one effect. */
export class ModelServer {
  /** keys of operations against which somebody else had said something: what the office sees */
  readonly conflicts = new Set<string>();
  private readonly journal = new Map<string, Kept>();
  private readonly done = new Map<string, number>();
  private readonly pictures = new Map<string, number>();
  private readonly values = new Map<number, { value: number; by: string }>();

  constructor(private readonly forgets: boolean) {}

  take(batch: readonly Operation[]): (Verdict & { readonly key: string })[] {
    return batch.map((one) => this.takeOne(one));
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
    if (before) return before.verdict;
    this.done.set(key, (this.done.get(key) ?? 0) + 1);
    const verdict = { key, verdict: this.apply(key, body), problem: null, other: null };
    this.journal.set(key, { body, verdict });
    return verdict;
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
