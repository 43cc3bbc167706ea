import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import type { MergeCounts } from '../../../../platform/records/merge-counts.js';
import { sameValue } from '../../columns/column.js';
import { type ChangeEntry, type KeptTable, type KeptThing, keptMerge, type Values } from './kept-merge.repository.js';

/** A kept thing as a row of a file wishes it: every column as of a new thing, and the cells as they were typed. */
export interface Wish {
  readonly id: string;
  readonly values: Values;
  readonly typed: Readonly<Record<string, string>>;
}

/** What a file says about things that are already there: only its own columns. */
export interface Says {
  /** the columns that the file has */
  readonly columns: ReadonlySet<string>;
  /** the properties that those columns fill; all others keep what is stored */
  readonly properties: ReadonlySet<string>;
  /** what must be done before rows take their new values */
  readonly beforeUpdate?: (things: readonly KeptThing[]) => Promise<void>;
}

/** What became of the rows; `ids` are the things that are new or say something else than before. */
export interface Merged extends MergeCounts {
  readonly ids: readonly string[];
}

/** Columns that are no statement about the thing. */
const SILENT = new Set(['organizationId', 'id', 'version', 'typed']);

/**
 * Merges kept things in a few statements however many they are, as `KeptRecords` would one by one: a version more and an
 * entry in the record of changes where something changed, and nothing at all where nothing did. A retired thing that a
 * file names again is in use again.
 */
export async function mergeKept(tx: OrganizationTransaction, table: KeptTable, wishes: readonly Wish[], says: Says): Promise<Merged> {
  const present = await keptMerge.ofIds(
    tx,
    table,
    wishes.map(({ id }) => id),
  );
  const known = new Set(keptMerge.properties(tx, table));
  const fresh: KeptThing[] = [];
  const renewed: KeptThing[] = [];
  const entries: ChangeEntry[] = [];
  for (const wish of wishes) {
    const before = present.get(wish.id) ?? null;
    const after = before ? changed(before, wish, says) : made(tx, wish, known);
    const entry = entryOf(table, before, after);
    if (entry) {
      after.version = entry.thingVersion;
      entries.push(entry);
    }
    if (!before) fresh.push(after);
    else if (entry || !sameValue(before.typed, after.typed)) renewed.push(after);
  }
  await keptMerge.insert(tx, table, fresh);
  if (renewed.length) await says.beforeUpdate?.(renewed);
  await keptMerge.update(tx, table, renewed);
  await keptMerge.note(tx, entries);
  return {
    created: fresh.length,
    changed: renewed.length,
    same: wishes.length - fresh.length - renewed.length,
    ids: entries.map(({ thingId }) => thingId),
  };
}

function made(tx: OrganizationTransaction, { id, values, typed }: Wish, known: ReadonlySet<string>): KeptThing {
  const stray = Object.keys(values).find((property) => !known.has(property));
  if (stray !== undefined) throw new TypeError(`an import fills the column ${stray}, which is not there`);
  return { ...values, organizationId: tx.organizationId, id, version: 1, retiredAt: null, typed } as unknown as KeptThing;
}

function changed(before: KeptThing, wish: Wish, says: Says): KeptThing {
  const own = Object.entries(wish.values).filter(([property]) => says.properties.has(property));
  const others = Object.entries(before.typed).filter(([column]) => !says.columns.has(column));
  return { ...before, ...Object.fromEntries(own), retiredAt: null, typed: { ...Object.fromEntries(others), ...wish.typed } } as KeptThing;
}

function entryOf(thing: string, before: KeptThing | null, after: KeptThing): ChangeEntry | null {
  const was: Values = before ?? {};
  const is: Values = after;
  const names = Object.keys(is).filter((name) => !SILENT.has(name) && !sameValue(was[name] ?? null, is[name] ?? null));
  if (before && !names.length) return null;
  const of = (values: Values): Record<string, unknown> => Object.fromEntries(names.map((name) => [name, values[name] ?? null]));
  return {
    thing,
    thingId: after.id,
    thingVersion: (before?.version ?? 0) + 1,
    deed: before ? (before.retiredAt ? 'restore' : 'change') : 'create',
    before: before ? of(was) : {},
    after: of(is),
  };
}
