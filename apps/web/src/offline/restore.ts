import type { Operation } from './operation.js';
import { EMPTY, type Outbox } from './outbox.js';

/** The form in which this version writes. A phone that holds a newer form is not written to by this version. */
export const FORM = 1;

/** A newer version of the product has written on this phone: this page is an old one. */
export class NewerForm extends Error {
  override readonly name = 'NewerForm';
}

type Row = Readonly<Record<string, unknown>>;

/** One step for each form: from it to the next. */
const STEPS: Readonly<Record<number, (row: Row) => Row>> = {
  // Form 0 had no pictures and did not know what had left.
  0: (row) => ({ hasLeft: true, picture: 'none', ...row }),
};

/** A row as this version understands it, from whatever form it was written in. */
export function restoreOperation(row: Row): Operation {
  const form = Number(row['form'] ?? 0);
  if (form > FORM) throw new NewerForm(`form ${form}`);
  let restored = row;
  for (let step = form; step < FORM; step += 1) restored = STEPS[step]?.(restored) ?? restored;
  const { form: _, ...operation } = restored;
  return operation as unknown as Operation;
}

/** The same as it is written. */
export const storedOperation = (operation: Operation): Row => ({ ...operation, form: FORM });

/** The outbox from its rows; a row stands in the order of its number. */
export function restoreOutbox(rows: readonly Row[], drafts: Outbox['drafts'], facts: Row): Outbox {
  const operations = rows.map(restoreOperation).sort((a, b) => a.seq - b.seq);
  const last = operations.at(-1)?.seq ?? 0;
  return {
    ...EMPTY,
    operations,
    drafts,
    typedAt: (facts['typedAt'] ?? {}) as Outbox['typedAt'],
    nextSeq: Math.max(last + 1, Number(facts['nextSeq'] ?? 1)),
    batch: Number(facts['batch'] ?? EMPTY.batch),
    narrowed: Number(facts['narrowed'] ?? EMPTY.narrowed),
    lastSentAt: typeof facts['lastSentAt'] === 'string' ? facts['lastSentAt'] : null,
  };
}
