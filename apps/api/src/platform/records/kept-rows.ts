import { type EntityTarget, type FindOptionsOrder, type FindOptionsWhere, In, IsNull } from 'typeorm';
import type { OrganizationTransaction } from '../database/organization-transaction.js';
import { type Loader, defineLoader, grouped } from '../graphql/loader.js';
import type { KeptRow } from './kept-row.js';

/** The thing of an id, retired or not; null when it is not there. */
export const loadById = <Row extends KeptRow>(row: EntityTarget<Row>): Loader<string, Row | null> =>
  defineLoader<string, Row | null>(
    async (tx, ids) =>
      new Map(
        (await tx.of(row).findBy({ organizationId: tx.organizationId, id: In([...ids]) } as FindOptionsWhere<Row>)).map((found) => [
          found.id,
          found,
        ]),
      ),
    null,
  );

/** The things in use that point at a row, in an order. */
export const loadInUse = <Row extends KeptRow>(
  row: EntityTarget<Row>,
  pointer: keyof Row & string,
  order: FindOptionsOrder<Row>,
): Loader<string, Row[]> =>
  defineLoader<string, Row[]>(async (tx, ids) => {
    const where = { organizationId: tx.organizationId, retiredAt: IsNull(), [pointer]: In([...ids]) } as FindOptionsWhere<Row>;
    return grouped(await tx.of(row).find({ where, order }), (found) => String(found[pointer]));
  }, []);

/** How many things in use point at a row. */
export const countInUse = <Row extends KeptRow>(
  tx: OrganizationTransaction,
  row: EntityTarget<Row>,
  pointer: keyof Row & string,
  id: string,
): Promise<number> =>
  tx.of(row).countBy({ organizationId: tx.organizationId, retiredAt: IsNull(), [pointer]: id } as FindOptionsWhere<Row>);
