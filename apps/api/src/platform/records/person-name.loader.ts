import { defineLoader } from '../graphql/loader.js';

interface Named {
  readonly id: string;
  readonly name: string;
}

const OF_MEMBERS =
  'select person.id, person.name from person join member on member.person_id = person.id where member.organization_id = $1 and person.id = any($2)';

/** The name of a person who is or was a member of the organization. */
export const personNameOfId = defineLoader<string, string | null>(
  async (tx, ids) => new Map((await tx.query<Named>(OF_MEMBERS, [tx.organizationId, ids])).map((row) => [row.id, row.name])),
  null,
);
