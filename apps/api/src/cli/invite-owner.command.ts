import { parseArgs } from 'node:util';
import { inTransaction } from '../platform/database/organization-transaction.js';
import { organizationActor } from '../platform/database/actor.js';
import { InviteMember } from '../platform/identity/invitations/invite-member.service.js';
import { ROLES, type Role } from '../platform/database/actor.js';
import { type Command, type ExitCode, UsageProblem } from './command.js';
import { withProduct } from './open-product.js';
import { organizationNamed } from './organization-named.js';

interface Words {
  readonly organization: string;
  readonly email: string;
  readonly name: string;
  readonly role: Role;
  readonly language: 'en' | 'es';
}

const WORD = { type: 'string' } as const;

/** Roles that need no client. */
const GIVEN = ROLES.filter((role) => role !== 'client');

function needed(values: Readonly<Record<string, string | undefined>>, word: string): string {
  const value = values[word]?.trim();
  if (!value) throw new UsageProblem(`--${word} is missing.`);
  return value;
}

function read(words: readonly string[]): Words {
  const { values } = parseArgs({ args: [...words], options: { organization: WORD, email: WORD, name: WORD, role: WORD, language: WORD } });
  const role = GIVEN.find((one) => one === (values.role ?? 'owner'));
  if (!role) throw new UsageProblem(`--role: found "${values.role}", expected one of ${GIVEN.join(', ')}.`);
  const language = values.language ?? 'en';
  if (language !== 'en' && language !== 'es') throw new UsageProblem(`--language: found "${language}", expected en or es.`);
  return { organization: needed(values, 'organization'), email: needed(values, 'email'), name: needed(values, 'name'), role, language };
}

/** Invites somebody from the command line: the way in to a server where nobody can sign in yet. */
export const inviteOwner: Command = {
  name: 'invite',
  summary: 'Prints a link by which somebody becomes a member. The organization is made when it is new.',
  usage: '--organization NAME --email ADDRESS --name NAME [--role owner|office|crewLead|technician] [--language en|es]',
  async run(words) {
    const { organization, ...person } = read(words);
    return withProduct<ExitCode>(async ({ app, source, database }) => {
      const found = (await organizationNamed(database.adminUrl, organization, { make: true }))!;
      const actor = organizationActor(found.id, 'job');
      const { link } = await inTransaction(source, actor, (tx) => app.get(InviteMember).run(tx, { ...person, clientId: null }));
      if (found.isNew) console.log(`The organization "${organization}" is new; it was made.`);
      console.log(`${person.name} becomes ${person.role} of "${organization}" with this link, once, within seven days.`);
      console.log(`Put the address of your server before it, such as http://localhost:3000`);
      console.log(link);
      return 0;
    });
  },
};
