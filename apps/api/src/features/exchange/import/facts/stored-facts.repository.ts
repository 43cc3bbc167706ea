import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';

type Typed = Readonly<Record<string, string>>;

/** A fact's owner (meter or controller) and the instant or day by which it is named. */
export interface FactPlace {
  readonly owner: string;
  readonly key: Date | string;
}

/** What is stored of a fact in columns that a file may lack. */
export interface StoredFact<Value> {
  readonly typed: Typed;
  readonly value: Value;
}

const QUESTIONS = {
  note: `select (sought.nth - 1)::integer as at, stored.typed, stored.note as value from unnest($2::uuid[], $3::timestamptz[]) with ordinality as sought (owner, key, nth)
    join reading stored on stored.organization_id = $1 and stored.meter_id = sought.owner and stored.read_at = sought.key and stored.replaced_by_id is null`,
  amount: `select (sought.nth - 1)::integer as at, stored.typed, stored.amount as value from unnest($2::uuid[], $3::date[]) with ordinality as sought (owner, key, nth)
    join bill stored on stored.organization_id = $1 and stored.meter_id = sought.owner and stored.start_on = sought.key`,
  pausedUntil: `select (sought.nth - 1)::integer as at, stored.typed, stored.paused_until as value from unnest($2::uuid[], $3::timestamptz[]) with ordinality as sought (owner, key, nth)
    join rain_pause stored on stored.organization_id = $1 and stored.controller_id = sought.owner and stored.paused_from = sought.key`,
} as const;

async function stored<Value>(
  tx: OrganizationTransaction,
  sql: string,
  places: readonly FactPlace[],
): Promise<(StoredFact<Value> | null)[]> {
  const rows = await tx.query<StoredFact<Value> & { at: number }>(sql, [
    tx.organizationId,
    places.map(({ owner }) => owner),
    places.map(({ key }) => key),
  ]);
  const byPlace = new Map(rows.map((row) => [row.at, row]));
  return places.map((_, at) => byPlace.get(at) ?? null);
}

/** What is stored of some facts, in the order in which they are asked; null where there is none. */
export const storedFacts = {
  notes: (tx: OrganizationTransaction, places: readonly FactPlace[]) => stored<string | null>(tx, QUESTIONS.note, places),
  amounts: (tx: OrganizationTransaction, places: readonly FactPlace[]) => stored<number | null>(tx, QUESTIONS.amount, places),
  pauseEnds: (tx: OrganizationTransaction, places: readonly FactPlace[]) => stored<Date | null>(tx, QUESTIONS.pausedUntil, places),
};
