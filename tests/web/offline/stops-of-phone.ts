import { arrivalOf, ownArrival, takenBackOf, withdrawalOf } from '../../../apps/web/src/features/fieldwork/stop/arrive/take-back.js';
import type { Operation } from '../../../apps/web/src/offline/operation.js';

/** What a phone says at a stop. */
export interface Saying {
  readonly kind: string;
  readonly subject: string;
  readonly body: string;
}

/** Keeps what is said; answers its key, or null where the phone cannot. */
type Save = (said: Saying) => string | null;

interface Store {
  readonly operations: readonly Operation[];
}

/** What one phone says of coming to stops and of taking that back: by the product's own rules of what can be taken back. */
export class StopsOfPhone {
  /** what its person was told is kept, by stop */
  private readonly said = new Map<string, 'here' | 'back'>();
  private readonly worked = new Set<string>();

  /** @param keepsQuiet - Left out on purpose: the word that takes back what had left. */
  constructor(private readonly keepsQuiet: boolean) {}

  get all(): readonly string[] {
    return [...this.said.keys()];
  }

  isThere(stop: string): boolean {
    return this.said.get(stop) === 'here' || this.worked.has(stop);
  }

  /** @returns the name by which the phone speaks of the visit */
  arrive({ operations }: Store, stop: string, save: Save): string | null {
    const own = ownArrival(operations, stop);
    if (own) return own.key;
    const key = save({ kind: 'arrive', subject: arrivalOf(stop), body: JSON.stringify({ stopId: stop }) });
    if (key) this.said.set(stop, 'here');
    return key;
  }

  work(store: Store, stop: string, save: Save): void {
    const visitId = this.arrive(store, stop, save);
    if (visitId && save({ kind: 'work', subject: `work ${visitId}`, body: JSON.stringify({ visitId }) })) this.worked.add(stop);
  }

  /** What never left is taken out; what may have left is taken back by a word of its own. */
  takeBack(
    store: () => Store,
    stop: string,
    { save, withdraw }: { readonly save: Save; readonly withdraw: (subject: string) => void },
  ): void {
    const { operations } = store();
    const own = ownArrival(operations, stop);
    // Once something was done the server keeps the visit, also where the phone has forgotten it.
    if (this.worked.has(stop) || !own || !takenBackOf(operations, own, { id: own.key })) return;
    withdraw(arrivalOf(stop));
    const isGone = !store().operations.some(({ key }) => key === own.key);
    const word = { kind: 'withdraw-visit', subject: withdrawalOf(own.key), body: JSON.stringify({ visitId: own.key }) };
    if (isGone || this.keepsQuiet || save(word)) this.said.set(stop, 'back');
  }
}
