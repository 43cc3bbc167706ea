import { randomUUID } from 'node:crypto';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { todayOf } from '../../../platform/jobs/clock.js';
import { computedProperties } from './computed-property.repository.js';

/** Another process may be of another release, which computes and judges otherwise: what it left is computed once anew. */
const PROCESS = randomUUID();

/** What a property is computed from, in a word, and whether its accounts and findings were computed from the same. */
export interface PropertyInputs {
  readonly inputs: string;
  readonly stands: boolean;
}

/** Which properties have accounts and findings that stand, as nothing has changed that enters them. */
export const standingProperties = {
  /**
   * Of every property in use. It is asked before anything of them is read: what changes in between differs from what is noted, and is computed
   * the next time.
   */
  async inputs(tx: OrganizationTransaction): Promise<ReadonlyMap<string, PropertyInputs>> {
    const rows = await computedProperties.onRecord(tx);
    return new Map(
      rows.map(({ propertyId, timeZone, standsStillOn, facts, computedFrom }) => {
        // Findings and the month under way depend on the day.
        const inputs = [PROCESS, todayOf({ standsStillOn, timeZone }), facts].join(' ');
        return [propertyId, { inputs, stands: inputs === computedFrom }];
      }),
    );
  },

  /**
   * Notes from what properties are computed in this transaction, or that nobody knows it. Findings are read after it: whoever decides on one
   * waits for this transaction, and then takes the note away.
   */
  async note(tx: OrganizationTransaction, propertyIds: readonly string[], of: ReadonlyMap<string, PropertyInputs> | null): Promise<void> {
    const known = new Map(
      propertyIds.flatMap((id) => {
        const inputs = of?.get(id)?.inputs;
        return inputs === undefined ? [] : [[id, inputs] as const];
      }),
    );
    const unknown = propertyIds.filter((id) => !known.has(id));
    if (known.size) await computedProperties.keep(tx, known);
    if (unknown.length) await computedProperties.forget(tx, unknown);
  },

  /** What people decided of a property's findings enters what becomes of them. */
  async forget(tx: OrganizationTransaction, propertyId: string): Promise<void> {
    await computedProperties.forget(tx, [propertyId]);
  },
};
