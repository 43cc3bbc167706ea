import { createHash, randomBytes, randomUUID } from 'node:crypto';
import { parse, validate } from 'graphql';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { ROLES, type Role } from '../../../apps/api/src/platform/database/actor.js';
import { type Permission, roleIncludes } from '../../../apps/api/src/platform/identity/permission.js';
import { readCatalogue } from '../../support/planting/catalogue.js';
import { plant, type Planted } from '../../support/planting/plant.js';
import { type Ids, ownTable } from '../../support/probing/arguments.js';
import { documentFor } from '../../support/probing/document.js';
import { type Operation, operationsOf, schemaOf } from '../../support/probing/operations.js';
import { type Somebody, startApp, type TestApp } from '../../support/test-app.js';

// OWASP ASVS 5.0, 8.2.1-8.2.3 and 8.4.1: every operation, as everybody, over the wire. The list comes from the running
// product: an operation is probed the day it is written.

/** What a stranger may ask, and why. */
const FOR_STRANGERS: Readonly<Record<string, string>> = {
  acceptInvitation: 'the link is the secret',
  foundOrganization: 'on an empty server there is nobody who could be signed in',
  invitation: 'the link is the secret',
  me: 'says that nobody is signed in',
  signIn: 'signs in',
  signInPage: 'is shown before anybody is signed in',
  signOut: 'a session that has ended can still be signed out',
};

/** Queries whose answers hold none of the planted texts: numbers or how the server is set, what only a link opens, or a made-up rule that is refused. */
const WITHOUT_TEXT = [
  'recommendations',
  'planSetting',
  'ruleChange',
  'changes',
  'findingPrecision',
  'invitation',
  'judgeReading',
  'monthBoard',
  'reportMailing',
  'signInPage',
  'weatherDays',
];

interface Sent {
  readonly text: string;
  readonly code: string | undefined;
  readonly data: unknown;
}

let product: TestApp;
let operations: Operation[];
let theirs: Planted;
let ours: Planted;
/** everything of the other organization that must not be seen: ids, and the marker in all its texts */
let secrets: string[];
let before: Record<string, string>;
const people = new Map<Role, Somebody>();

/** All rows of the other organization, as text. */
async function theirRows(): Promise<Record<string, string>> {
  const found: Record<string, string> = {};
  for (const table of (await readCatalogue(product.database)).tables) {
    const key = table === 'organization' || table === 'person' ? 'id' : 'organization_id';
    const rows = await product.database.admin<{ text: string }>(
      `select row_to_json("${table}")::text as text from "${table}" where ${key} = $1 order by 1`,
      [table === 'person' ? theirs.ids['person'] : theirs.organizationId],
    );
    found[table] = rows.map((row) => row.text).join('\n');
  }
  return found;
}

beforeAll(async () => {
  product = await startApp();
  operations = operationsOf(product.app);
  theirs = await plant(product.database, 'planted-theirs');
  ours = await plant(product.database, 'planted-ours');
  before = await theirRows();
  secrets = [theirs.marker, ...Object.values(theirs.ids)];
  for (const role of ROLES)
    people.set(role, await product.somebody(ours.organizationId, role, role === 'client' ? ours.ids['client'] : undefined));
});
afterAll(() => product.close());

/** A session of its own for each probe: some operations end theirs. */
async function cookieOf(role: Role): Promise<string> {
  const token = randomBytes(32).toString('base64url');
  await product.database.admin(
    `insert into session (token_hash, person_id, organization_id, expires_at) values ($1, $2, $3, now() + interval '1 day')`,
    [createHash('sha256').update(token).digest(), people.get(role)!.personId, ours.organizationId],
  );
  return `rillbook=${token}`;
}

async function probe(operation: Operation, ids: Ids, cookie: string | undefined, bare = false): Promise<Sent> {
  const body = JSON.stringify(documentFor(operation, ids, bare));
  const response = await fetch(`${product.url}/graphql`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...(cookie && { cookie }) },
    body,
  });
  const text = await response.text();
  const answer = JSON.parse(text) as { data?: Record<string, unknown> | null; errors?: { extensions: { code: string } }[] };
  // What the prober sent may come back; what it did not send may not.
  const untold = Object.values(ids).reduce((left, id) => (body.includes(id) ? left.replaceAll(id, '…') : left), text);
  return { text: untold, code: answer.errors?.[0]?.extensions.code, data: answer.data?.[operation.name] ?? null };
}

const seenIn = (text: string): string[] => secrets.filter((secret) => text.includes(secret));

it('every operation names its permission, or why it is public', () => {
  expect(operations.length).toBeGreaterThan(20);
  expect(operations.filter((operation) => !operation.permission && !operation.reason).map((operation) => operation.name)).toEqual([]);
  expect(
    operations
      .filter((operation) => operation.reason)
      .map((operation) => operation.name)
      .sort(),
  ).toEqual(Object.keys(FOR_STRANGERS));
});

it('every probe is a valid request that asks for what there is', () => {
  const schema = schemaOf(product.app);
  for (const operation of operations)
    expect(
      validate(schema, parse(documentFor(operation, theirs.ids).query)).map((error) => error.message),
      operation.name,
    ).toEqual([]);
});

it('a stranger is asked to sign in by every operation but the public ones, and learns nothing from those', async () => {
  for (const operation of operations) {
    const { text, code, data } = await probe(operation, theirs.ids, undefined);
    expect(seenIn(text), operation.name).toEqual([]);
    if (operation.name in FOR_STRANGERS) continue;
    expect([operation.name, code, data]).toEqual([operation.name, 'SIGN_IN_NEEDED', null]);
  }
});

/** Whether the answer is what the role's permissions say. */
function judge(operation: Operation, role: Role, { code, data }: Sent): void {
  const allowed = operation.reason !== undefined || roleIncludes(role, operation.permission as Permission);
  const what = `${role}: ${operation.name}`;
  if (!allowed) expect([what, code, data]).toEqual([what, 'NOT_ALLOWED', null]);
  else expect([what, code === 'SIGN_IN_NEEDED', code === 'UNFORESEEN'], what).toEqual([what, false, false]);
}

it.each(ROLES)(
  "another organization's %s sees nothing of the first with its ids, and is refused what the role does not include",
  async (role) => {
    for (const operation of operations) {
      const sent = await probe(operation, theirs.ids, await cookieOf(role));
      expect(seenIn(sent.text), `${role}: ${operation.name}`).toEqual([]);
      judge(operation, role, sent);
    }
  },
);

it.each(ROLES)('%s sees nothing of the other organization among their own things', async (role) => {
  for (const operation of operations.filter((one) => one.kind === 'query')) {
    for (const bare of [false, true]) {
      const sent = await probe(operation, ours.ids, await cookieOf(role), bare);
      expect(seenIn(sent.text), `${role}: ${operation.name}`).toEqual([]);
      judge(operation, role, sent);
    }
  }
});

it.each(ROLES)('%s meets a sentence for things that are not there', async (role) => {
  const nowhere = Object.fromEntries(Object.keys(theirs.ids).map((table) => [table, randomUUID()]));
  for (const operation of operations) judge(operation, role, await probe(operation, nowhere, await cookieOf(role)));
});

it('our own things cannot be tied to those of the first organization', async () => {
  for (const operation of operations.filter((one) => one.kind === 'mutation')) {
    const own = ownTable(operation.name, ours.ids);
    if (!own) continue;
    const sent = await probe(operation, { ...theirs.ids, [own]: ours.ids[own]! }, await cookieOf('owner'));
    expect(seenIn(sent.text), operation.name).toEqual([]);
    judge(operation, 'owner', sent);
  }
});

it('and no probe changed a row of the first organization', async () => {
  expect(before['client']).toContain(theirs.marker);
  expect(await theirRows()).toEqual(before);
});

/** A dry season and a storm yesterday: what is asked the day after has something to tell. */
async function theirStorm(): Promise<void> {
  await product.database.admin(
    `insert into weather_day (organization_id, station_id, day, tmax_c, tmin_c, given_eto_mm, rain_mm)
     select organization.id, $2, coalesce(stands_still_on, current_date) - back, 30, 14, 5, case when back = 1 then 60 else 0 end
       from organization, generate_series(1, 100) as back where organization.id = $1
     on conflict (organization_id, station_id, day) do update set rain_mm = excluded.rain_mm`,
    [theirs.organizationId, theirs.ids['weather_station']],
  );
}

it('the probes reach real things: the owner of the first organization sees their own in most queries', async () => {
  const owner = await product.somebody(theirs.organizationId, 'owner');
  await theirStorm();
  const blind: string[] = [];
  for (const operation of operations.filter((one) => one.kind === 'query')) {
    const texts = [await probe(operation, theirs.ids, owner.cookie, true), await probe(operation, theirs.ids, owner.cookie)].map(
      (sent) => sent.text,
    );
    if (!texts.some((text) => text.includes(theirs.marker))) blind.push(operation.name);
  }
  // These answer without a text of the organization: numbers, or what a link or a device opens.
  expect(blind).toEqual(expect.arrayContaining(['invitation', 'signInPage']));
  expect(blind.filter((name) => !WITHOUT_TEXT.includes(name))).toEqual([]);
});
