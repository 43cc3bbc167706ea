import { randomUUID } from 'node:crypto';
import { ownerPool } from '../platform/database/migrate.js';

/** An organization found or made by its name. */
export interface NamedOrganization {
  readonly id: string;
  readonly isNew: boolean;
}

/**
 * Finds an organization by its name, as the owner of the tables: only whoever administers the database can do this.
 *
 * @param wish.make makes it when there is none of that name
 * @returns null when there is none and none was to be made
 */
export async function organizationNamed(adminUrl: string, wished: string, wish: { make: boolean }): Promise<NamedOrganization | null> {
  const name = wished.trim();
  const pool = ownerPool(adminUrl, 1);
  try {
    const { rows } = await pool.query<{ id: string }>('select id from organization where name = $1', [name]);
    if (rows[0]) return { id: rows[0].id, isNew: false };
    if (!wish.make) return null;
    const id = randomUUID();
    await pool.query('begin');
    await pool.query(`select set_config('app.organization_id', $1, true)`, [id]);
    await pool.query('insert into organization (id, name) values ($1, $2)', [id, name]);
    await pool.query('commit');
    return { id, isNew: true };
  } finally {
    await pool.end();
  }
}
