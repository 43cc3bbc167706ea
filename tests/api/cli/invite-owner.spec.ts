import { afterAll, afterEach, beforeAll, beforeEach, expect, it, vi } from 'vitest';
import { inviteOwner } from '../../../apps/api/src/cli/invite-owner.command.js';
import { runCommand } from '../../../apps/api/src/cli/run-command.js';
import { startApp, type TestApp } from '../../support/test-app.js';

let product: TestApp;
const printed: string[] = [];
const said: string[] = [];
const run = (...words: string[]) => runCommand([inviteOwner], words, (line) => said.push(line));
const ada = ['--organization', 'Heron Grounds', '--email', 'ada@example.test', '--name', 'Ada Heron'];

beforeAll(async () => {
  product = await startApp();
  process.env['DATABASE_URL'] = product.database.adminUrl;
});
afterAll(async () => {
  delete process.env['DATABASE_URL'];
  await product.close();
});
beforeEach(() => {
  said.length = printed.length = 0;
  vi.spyOn(console, 'log').mockImplementation((line: string) => void printed.push(line));
});
afterEach(() => vi.restoreAllMocks());

it('prints a link that makes an owner of a new organization', async () => {
  expect(await run('invite', ...ada)).toBe(0);
  expect(printed[0]).toBe('The organization "Heron Grounds" is new; it was made.');
  const link = printed.at(-1)!;
  const accepted = await product.send(
    'mutation($link: String!) { acceptInvitation(link: $link, password: "a heron in the reeds") { me { role organization { name } } } }',
    { link },
  );
  expect(accepted.data.acceptInvitation.me).toEqual({ role: 'owner', organization: { name: 'Heron Grounds' } });
});

it('finds the organization the next time, and takes a role and a language', async () => {
  expect(
    await run(
      'invite',
      '--organization',
      'Heron Grounds',
      '--email',
      'ben@example.test',
      '--name',
      'Ben',
      '--role',
      'office',
      '--language',
      'es',
    ),
  ).toBe(0);
  expect(printed[0]).toBe('Ben becomes office of "Heron Grounds" with this link, once, within seven days.');
  expect(await product.database.admin(`select role, language from invitation where email = 'ben@example.test'`)).toEqual([
    { role: 'office', language: 'es' },
  ]);
  expect(await product.database.admin('select from organization')).toHaveLength(1);
});

it('refuses with a sentence: 1 for what cannot be done, 2 for what it does not understand', async () => {
  expect(await run('invite', ...ada)).toBe(1);
  expect(said).toEqual(['ada@example.test is a member already. Change the role in the list of members.']);
  said.length = 0;
  expect(await run('invite', '--email', 'a@example.test', '--name', 'A')).toBe(2);
  expect(said[0]).toMatch(/^--organization is missing\.\nUse it like this: npm run invite -- --organization NAME/);
  expect(await run('invite', ...ada, '--role', 'king')).toBe(2);
  expect(said[1]).toMatch(/^--role: found "king", expected one of owner, office, crewLead, technician\./);
  expect(await run('invite', ...ada, '--colour', 'blue')).toBe(2);
  expect(said[2]).toMatch(/Unknown option '--colour'/);
  expect(await run('invent')).toBe(2);
  expect(said[3]).toMatch(/^There is no command "invent"\.\nRillbook on the command line:\n {2}npm run invite/);
  expect(printed).toEqual([]);
});

it('says when there is no database to be reached, and what to check', async () => {
  process.env['DATABASE_URL'] = 'postgres://postgres:x@127.0.0.1:9/none';
  try {
    expect(await run('invite', ...ada)).toBe(1);
    expect(said[0]).toMatch(
      /^No connection to the database at 127\.0\.0\.1:9: .*ECONNREFUSED.* Check DATABASE_URL and that the server runs\.$/,
    );
  } finally {
    process.env['DATABASE_URL'] = product.database.adminUrl;
  }
});
