import { afterAll, beforeAll, expect, it } from 'vitest';
import { hashPassword } from '../../../apps/api/src/platform/identity/sessions/passwords.js';
import { type Somebody, startApp, type TestApp } from '../../support/test-app.js';

const PASSWORD = 'quail under the hedge';
let product: TestApp;
let owner: Somebody;
let organizationId: string;

beforeAll(async () => {
  product = await startApp();
});
afterAll(() => product.close());

/** Each test has an organization of its own. */
async function fresh(): Promise<void> {
  organizationId = await product.organization();
  owner = await product.somebody(organizationId, 'owner');
}

const invite = async (email: string, more = 'role: office'): Promise<string> =>
  (await owner.send(`mutation { inviteMember(email: "${email}", name: "Ada Quail", ${more}) { link } }`)).data.inviteMember.link as string;
const accept = (link: string, password = PASSWORD) =>
  product.send(
    'mutation($link: String!, $password: String!) { acceptInvitation(link: $link, password: $password) { me { role person { name email } organization { id } memberships { organizationId } } } }',
    { link, password },
  );
const code = (answer: { errors: { extensions: { code: string } }[] }) => answer.errors[0]?.extensions.code;
const memberOf = async (who: Somebody) =>
  (
    await product.database.admin<{ version: number; role: string; retired_at: Date | null }>(
      'select version, role, retired_at from member where id = $1',
      [who.memberId],
    )
  )[0]!;

it('invites somebody by a link that works once and sets the password', async () => {
  await fresh();
  const link = await invite('ada@example.test', 'role: crewLead, language: es');
  expect(link).toMatch(new RegExp(`^/invitation/${organizationId}\\.[\\w-]{43}$`));
  expect((await owner.send('{ invitations { email role } }')).data.invitations).toEqual([{ email: 'ada@example.test', role: 'crewLead' }]);
  expect(
    (await product.send(`{ invitation(link: "https://rillbook.example.test${link}") { email name language } }`)).data.invitation,
  ).toEqual({ email: 'ada@example.test', name: 'Ada Quail', language: 'es' });
  expect((await accept(link)).data.acceptInvitation.me).toMatchObject({
    role: 'crewLead',
    person: { name: 'Ada Quail', email: 'ada@example.test' },
    organization: { id: organizationId },
  });
  expect(code(await accept(link))).toBe('INVITATION_NOT_VALID');
  expect((await product.send(`{ invitation(link: "${link}") { email } }`)).data.invitation).toBeNull();
  expect((await owner.send('{ invitations { id } }')).data.invitations).toEqual([]);
});

it('takes an invitation back: its link no longer opens, and it cannot be taken back twice', async () => {
  await fresh();
  const link = await invite('gone@example.test');
  await invite('stays@example.test');
  const waiting = (await owner.send('{ invitations { id email } }')).data.invitations as { id: string; email: string }[];
  const { id } = waiting.find(({ email }) => email === 'gone@example.test')!;
  const withdraw = (who: Somebody) => who.send('mutation($id: ID!) { withdrawInvitation(id: $id) { email } }', { id });
  const another = await product.somebody(await product.organization(), 'owner');
  expect(code(await withdraw(another))).toBe('NOT_FOUND');
  expect((await withdraw(owner)).data.withdrawInvitation).toEqual([{ email: 'stays@example.test' }]);
  expect(code(await withdraw(owner))).toBe('NOT_FOUND');
  expect((await product.send(`{ invitation(link: "${link}") { email } }`)).data.invitation).toBeNull();
  expect(code(await accept(link))).toBe('INVITATION_NOT_VALID');
});

it('keeps no secret of the link: the table has its hash', async () => {
  await fresh();
  const link = await invite('hash@example.test');
  const [row] = await product.database.admin<{ text: string }>(
    'select row_to_json(invitation)::text as text from invitation where organization_id = $1',
    [organizationId],
  );
  expect(row!.text).not.toContain(link.split('.')[1]);
});

it('refuses a link that is too old, replaced, of another organization or made up', async () => {
  await fresh();
  const old = await invite('late@example.test');
  await product.database.admin(`update invitation set expires_at = now() - interval '1 second' where organization_id = $1`, [
    organizationId,
  ]);
  expect(code(await accept(old))).toBe('INVITATION_NOT_VALID');
  const first = await invite('twice@example.test');
  const second = await invite('twice@example.test');
  expect(code(await accept(first))).toBe('INVITATION_NOT_VALID');
  expect(code(await accept(second.replace(organizationId, await product.organization())))).toBe('INVITATION_NOT_VALID');
  expect(code(await accept('/invitation/nonsense'))).toBe('INVITATION_NOT_VALID');
  const days = await product.database.admin<{ days: number }>(
    `select round(extract(epoch from expires_at - created_at) / 86400)::int as days from invitation where organization_id = $1 and email = 'twice@example.test'`,
    [organizationId],
  );
  expect(days).toEqual([{ days: 7 }]);
});

it('admits a link once however many press at the same moment', async () => {
  await fresh();
  const link = await invite('race@example.test');
  const answers = await Promise.all(Array.from({ length: 4 }, () => accept(link)));
  expect(answers.filter((answer) => answer.data?.acceptInvitation).length).toBe(1);
  expect(await product.database.admin('select from person where email = $1', ['race@example.test'])).toHaveLength(1);
});

it('demands the password of a person who is known already, who then belongs to both organizations', async () => {
  await fresh();
  const elsewhere = await product.somebody(await product.organization(), 'technician');
  await product.database.admin('update person set password_hash = $2 where id = $1', [elsewhere.personId, await hashPassword(PASSWORD)]);
  const link = await invite(elsewhere.email);
  expect(code(await accept(link, 'quail under the fence'))).toBe('WRONG_PASSWORD');
  const { me } = (await accept(link)).data.acceptInvitation;
  expect(me.memberships.map((one: { organizationId: string }) => one.organizationId).sort()).toEqual(
    [organizationId, elsewhere.organizationId].sort(),
  );
  expect(
    (await elsewhere.send(`mutation { chooseOrganization(organizationId: "${organizationId}") { role organization { id } } }`)).data
      .chooseOrganization,
  ).toEqual({ role: 'office', organization: { id: organizationId } });
});

it('refuses a common or short password, and an address that is a member already', async () => {
  await fresh();
  const link = await invite('weak@example.test');
  for (const weak of ['12345', 'Password123'])
    expect((await accept(link, weak)).errors[0]!.extensions).toMatchObject({ code: 'VALUE_REFUSED', details: { field: 'password' } });
  expect(code(await owner.send(`mutation { inviteMember(email: "${owner.email}", name: "Again", role: office) { link } }`))).toBe(
    'ALREADY_MEMBER',
  );
});

it('invites a client only with the client they belong to, and shows it', async () => {
  await fresh();
  expect(code(await owner.send('mutation { inviteMember(email: "c@example.test", name: "C", role: client) { link } }'))).toBe(
    'VALUE_REFUSED',
  );
  const { id } = (await owner.send('mutation { createClient(input: { name: "Quail Commons HOA" }) { ... on Client { id } } }')).data
    .createClient;
  await accept(await invite('c@example.test', `role: client, clientId: "${id}"`));
  expect((await owner.send('{ members { role person { email } client { name } } }')).data.members).toContainEqual({
    role: 'client',
    person: { email: 'c@example.test' },
    client: { name: 'Quail Commons HOA' },
  });
});

it('changes a role at once, for the version that was read, and keeps who did it', async () => {
  await fresh();
  const office = await product.somebody(organizationId, 'office');
  expect((await office.send('{ clients { id } }')).errors).toEqual([]);
  const change = (version: number) =>
    owner.send(`mutation { changeMember(id: "${office.memberId}", version: ${version}, role: technician) { role version } }`);
  expect((await change(1)).data.changeMember).toEqual({ role: 'technician', version: 2 });
  expect((await change(1)).errors[0]!.extensions).toEqual({ code: 'CHANGED_MEANWHILE', details: { thing: 'member', version: 2 } });
  expect(code(await office.send('{ clients { id } }'))).toBe('NOT_ALLOWED');
  expect(await product.database.admin('select deed, person_id, after from change where thing_id = $1', [office.memberId])).toEqual([
    { deed: 'change', person_id: owner.personId, after: { role: 'technician', clientId: null } },
  ]);
});

it('ends the sessions of a retired member in that organization at once', async () => {
  await fresh();
  const office = await product.somebody(organizationId, 'office');
  expect(
    (await owner.send(`mutation { retireMember(id: "${office.memberId}", version: 1) { retiredAt } }`)).data.retireMember.retiredAt,
  ).toBeTruthy();
  expect(code(await office.send('{ clients { id } }'))).toBe('SIGN_IN_NEEDED');
  expect(await product.database.admin('select from session where person_id = $1', [office.personId])).toEqual([]);
  expect((await owner.send('{ members { id } }')).data.members).toEqual([{ id: owner.memberId }]);
});

it('takes a retired member in again by a new invitation, in their old place', async () => {
  await fresh();
  const office = await product.somebody(organizationId, 'office');
  await product.database.admin('update member set retired_at = now() where id = $1', [office.memberId]);
  await accept(await invite(office.email, 'role: technician'));
  expect(await memberOf(office)).toEqual({ version: 2, role: 'technician', retired_at: null });
});

it('never loses the last owner, even when two owners retire each other at the same moment', async () => {
  await fresh();
  expect(code(await owner.send(`mutation { retireMember(id: "${owner.memberId}", version: 1) { id } }`))).toBe('LAST_OWNER');
  expect(code(await owner.send(`mutation { changeMember(id: "${owner.memberId}", version: 1, role: office) { id } }`))).toBe('LAST_OWNER');
  const second = await product.somebody(organizationId, 'owner');
  await Promise.all([
    owner.send(`mutation { retireMember(id: "${second.memberId}", version: 1) { id } }`),
    second.send(`mutation { retireMember(id: "${owner.memberId}", version: 1) { id } }`),
  ]);
  expect([await memberOf(owner), await memberOf(second)].filter((member) => !member.retired_at)).toHaveLength(1);
});

it('changes a password: all other sessions end, this device gets a new one', async () => {
  await fresh();
  await product.database.admin('update person set password_hash = $2 where id = $1', [owner.personId, await hashPassword(PASSWORD)]);
  const change = (present: string) =>
    owner.send('mutation($present: String!) { changePassword(present: $present, wished: "a heron in the reeds") }', { present });
  expect(code(await change('wrong one'))).toBe('WRONG_PASSWORD');
  expect((await change(PASSWORD)).data.changePassword).toBe(true);
  expect(code(await owner.send('{ members { id } }'))).toBe('SIGN_IN_NEEDED');
  const again = await product.send(`mutation { signIn(email: "${owner.email}", password: "a heron in the reeds") { __typename } }`);
  expect(again.data.signIn.__typename).toBe('SignedIn');
});

it('signs out everywhere', async () => {
  await fresh();
  expect((await owner.send('mutation { signOutEverywhere }')).data.signOutEverywhere).toBe(true);
  expect((await owner.send('{ me { memberId } }')).data.me).toBeNull();
});

it('changes the organization for the version that was read', async () => {
  await fresh();
  const change = (version: number) =>
    owner.send(
      `mutation { changeOrganization(version: ${version}, input: { name: " Heron Grounds ${organizationId}", units: metric, language: es, leastConfidence: 0.95, leastLitres: 1000, leastMoney: 5 }) { name units version leastConfidence } }`,
    );
  expect((await change(1)).data.changeOrganization).toEqual({
    name: `Heron Grounds ${organizationId}`,
    units: 'metric',
    version: 2,
    leastConfidence: 0.95,
  });
  expect(code(await change(1))).toBe('CHANGED_MEANWHILE');
});
