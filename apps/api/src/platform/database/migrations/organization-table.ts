import type { QueryRunner } from 'typeorm';
import { APP_ROLE } from '../database-url.js';

/** What the application may do with the rows of a table; never truncate, which row-level security does not cover. */
export type Grant = 'select' | 'insert' | 'update' | 'delete';

const EVERYTHING: readonly Grant[] = ['select', 'insert', 'update', 'delete'];

/**
 * Makes a table whose rows belong to one organization each: keyed by organization and id, closed by row-level
 * security that holds for the owner too.
 *
 * @param columns the columns and constraints after organization_id and id, as SQL
 * @param kept whether rows carry a version, a time of retirement and the cells as they were typed
 */
export async function organizationTable(
  runner: QueryRunner,
  name: string,
  columns: string,
  options: { kept?: boolean; key?: string; grants?: readonly Grant[] } = {},
): Promise<void> {
  const kept = options.kept ? `version integer not null default 1, retired_at timestamptz, typed jsonb not null default '{}'::jsonb,` : '';
  const id = options.key ? '' : 'id uuid not null default gen_random_uuid(),';
  await runner.query(
    `create table ${name} (organization_id uuid not null references organization (id) on delete cascade, ${id} ${kept} ${columns}, constraint ${name}_key primary key (organization_id, ${options.key ?? 'id'}))`,
  );
  await closeToOthers(runner, name, options.grants ?? EVERYTHING);
}

/** Row-level security, forced, with one equality on a bare setting; `nullif` because the setting is '' after a transaction. */
export async function closeToOthers(runner: QueryRunner, name: string, grants: readonly Grant[]): Promise<void> {
  const mine = `organization_id = nullif(current_setting('app.organization_id', true), '')::uuid`;
  await runner.query(`alter table ${name} enable row level security`);
  await runner.query(`alter table ${name} force row level security`);
  await runner.query(`create policy organization_only on ${name} using (${mine}) with check (${mine})`);
  await runner.query(`grant ${grants.join(', ')} on ${name} to ${APP_ROLE}`);
}

/** A foreign key that carries the organization, so that no row can point at another organization's. */
export const points = (to: string, column = `${to}_id`, then = 'on delete cascade'): string =>
  `foreign key (organization_id, ${column}) references ${to} (organization_id, id) ${then}`;

/** The same for an optional pointer: only the pointer is cleared, the organization stays. */
export const mayPoint = (to: string, column = `${to}_id`): string => points(to, column, `on delete set null (${column})`);

/** Drops tables in the order given. */
export async function dropTables(runner: QueryRunner, names: readonly string[]): Promise<void> {
  for (const name of names) await runner.query(`drop table ${name} cascade`);
}
