import { ownerPool } from '../platform/database/migrate.js';

/** The names of all organizations, as the owner of the tables. */
export async function organizationNames(adminUrl: string): Promise<string[]> {
  const pool = ownerPool(adminUrl, 1);
  try {
    const { rows } = await pool.query<{ name: string }>('select name from organization order by name');
    return rows.map((row) => row.name);
  } finally {
    await pool.end();
  }
}
