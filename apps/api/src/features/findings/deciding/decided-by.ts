import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { defineLoader } from '../../../platform/graphql/loader.js';

const personName = defineLoader<string, string | null>(
  async (tx, ids) =>
    new Map(
      (
        await tx.query<{ id: string; name: string }>(
          'select person.id, person.name from person join member on member.person_id = person.id where member.organization_id = $1 and person.id = any($2)',
          [tx.organizationId, ids],
        )
      ).map((row) => [row.id, row.name]),
    ),
  null,
);

/** The name of a member of this organization, by the person's id. */
export const nameOfPerson = async (tx: OrganizationTransaction, personId: string | null): Promise<string | null> =>
  personId ? personName.of(tx).load(personId) : null;
