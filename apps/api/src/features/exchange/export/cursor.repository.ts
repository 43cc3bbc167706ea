import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';

/** An answer that is read a few rows at a time. */
export interface Cursor<Row> {
  rows(atOnce: number): AsyncGenerator<Row>;
}

/** Opens a cursor: its rows are those of this moment, however late they are read. */
export async function openCursor<Row>(tx: OrganizationTransaction, name: string, sql: string): Promise<Cursor<Row>> {
  await tx.query(`declare ${name} no scroll cursor for ${sql}`, [tx.organizationId]);
  return {
    async *rows(atOnce) {
      for (;;) {
        const rows = await tx.query<Row>(`fetch ${atOnce} from ${name}`);
        yield* rows;
        if (rows.length < atOnce) break;
      }
      await tx.query(`close ${name}`);
    },
  };
}
