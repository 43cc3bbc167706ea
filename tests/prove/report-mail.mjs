// 1,000 mails of reports through a mail server that fails three times in ten in every way, by two servers of the product of which one is killed
// in the middle: none lost, none sent twice, those of which nobody knows listed. `npm run prove -- report-mail 200` sends fewer.
import { spawn } from 'node:child_process';
import { createHash, randomBytes } from 'node:crypto';
import path from 'node:path';
import { SMTPServer } from 'smtp-server';
import { inTemporaryProduct } from '../support/worlds/temporary-product.mjs';

export const readsShared = false;

const MAILS = 1000;
const ORGANIZATIONS = 4;
const MAILS_OF_CLIENT = 5;
const SHARE_OF_FAULTS = 0.3;
const MOST_SILENT = 3;
const GIVE_UP_MS = 330_000;
const MAIN = path.resolve(import.meta.dirname, '../../apps/api/dist/main.js');

function randomOf(seed) {
  let state = seed % 2_147_483_647;
  return () => {
    state = (state * 16_807) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

const answer = (responseCode, words) => Object.assign(new Error(words), { responseCode });
const FAULTS = [
  'hung up at once',
  '4xx greeting',
  '4xx sender',
  '4xx recipient',
  '5xx recipient',
  'dropped at recipient',
  'dropped in data',
  '4xx data',
  '5xx data',
  'slow',
  'silent',
  'dropped after data, kept',
  'dropped after data, lost',
];

/** A mail server whose every session has a fate. What it keeps is counted by recipient: that is what a mailbox would have got. */
async function faultyServer(random) {
  const kept = new Map();
  const fates = Object.fromEntries(FAULTS.map((name) => [name, 0]));
  let silent = 0;
  const fateOf = () => {
    if (random() >= SHARE_OF_FAULTS) return null;
    const wish = FAULTS[Math.floor(random() * FAULTS.length)];
    if (wish === 'silent' && (silent += 1) > MOST_SILENT) return 'slow';
    return wish;
  };
  const drop = ({ id }) => {
    for (const connection of server.connections) if (connection.id === id) connection._socket.destroy();
  };
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS'],
    onConnect(session, done) {
      session.fate = fateOf();
      if (session.fate) fates[session.fate] += 1;
      if (session.fate === 'hung up at once') return drop(session);
      if (session.fate === '4xx greeting') return done(answer(421, 'too busy'));
      if (session.fate === 'slow') return setTimeout(done, 700);
      done();
    },
    onMailFrom(_, session, done) {
      done(session.fate === '4xx sender' ? answer(451, 'try later') : null);
    },
    onRcptTo(_, session, done) {
      if (session.fate === 'dropped at recipient') return drop(session);
      if (session.fate === '4xx recipient') return done(answer(450, 'mailbox busy'));
      done(session.fate === '5xx recipient' ? answer(550, 'no such mailbox') : null);
    },
    onData(stream, session, done) {
      const { fate } = session;
      if (fate === 'dropped in data') stream.once('data', () => drop(session));
      stream.on('data', () => undefined);
      stream.on('end', () => {
        const [{ address }] = session.envelope.rcptTo;
        const keep = () => kept.set(address, (kept.get(address) ?? 0) + 1);
        if (fate === '4xx data') return done(answer(452, 'disk full'));
        if (fate === '5xx data') return done(answer(554, 'refused'));
        if (fate === 'silent') return undefined;
        if (fate === 'dropped after data, lost' || fate === 'dropped in data') return drop(session);
        keep();
        if (fate === 'dropped after data, kept') return drop(session);
        done();
      });
    },
  });
  // A socket that the server itself cut is part of the play.
  server.on('error', () => undefined);
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    kept,
    fates,
    url: `smtp://127.0.0.1:${server.server.address().port}`,
    close: () => new Promise((resolve) => server.close(resolve)),
  };
}

/** One server of the product, beside others on the same database. */
function startServer(adminUrl, smtpUrl) {
  const environment = {
    ...process.env,
    DATABASE_URL: adminUrl,
    PORT: '0',
    RILLBOOK_DEMO: 'no',
    SMTP_URL: smtpUrl,
    PUBLIC_URL: 'https://water.example.test',
  };
  const child = spawn(process.execPath, [MAIN], { env: environment, stdio: ['ignore', 'pipe', 'inherit'] });
  return new Promise((resolve, reject) => {
    let said = '';
    child.once('exit', (code) => reject(new Error(`a server ended with ${code}: ${said}`)));
    child.stdout.on('data', (piece) => {
      said += piece;
      const found = /http:\/\/localhost:(\d+)/.exec(said);
      if (!found) return;
      child.removeAllListeners('exit');
      resolve({ child, url: `http://127.0.0.1:${found[1]}` });
    });
  });
}

/** An organization with clients of five addresses each, and somebody of its office who is signed in. */
async function anOrganization(admin, at, clients) {
  const one = async (text, values) => (await admin.query(text, values)).rows[0].id;
  const organization = await one('insert into organization (name) values ($1) returning id', [`Meadow ${at}`]);
  const person = await one('insert into person (email, name) values ($1, $2) returning id', [`office-${at}@example.test`, 'Office']);
  await admin.query(`insert into member (organization_id, person_id, role) values ($1, $2, 'office')`, [organization, person]);
  const token = randomBytes(32).toString('base64url');
  await admin.query(
    `insert into session (token_hash, person_id, organization_id, expires_at) values ($1, $2, $3, now() + interval '1 day')`,
    [createHash('sha256').update(token).digest(), person, organization],
  );
  for (let client = 0; client < clients; client += 1) {
    const emails = Array.from({ length: MAILS_OF_CLIENT }, (_, mail) => `m${at}-${client}-${mail}@example.test`);
    const id = await one('insert into client (organization_id, name, emails) values ($1, $2, $3) returning id', [
      organization,
      `Client ${client}`,
      emails,
    ]);
    await admin.query('insert into property (organization_id, client_id, name, time_zone) values ($1, $2, $3, $4)', [
      organization,
      id,
      `Property ${client}`,
      'America/Los_Angeles',
    ]);
  }
  return { organization, cookie: `rillbook=${token}` };
}

const pause = (ms) => new Promise((resolve) => setTimeout(resolve, ms));

async function send(url, cookie, query, variables = {}) {
  const response = await fetch(`${url}/graphql`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', cookie },
    body: JSON.stringify({ query, variables }),
  });
  const { data, errors } = await response.json();
  if (errors) throw new Error(errors[0].message);
  return data;
}

async function untilIdle(admin, until, begun) {
  for (;;) {
    const { rows } = await admin.query(`select count(*)::int as count from background_job where state in ('queued', 'running')`);
    if (rows[0].count === 0) return;
    if (Date.now() - begun > GIVE_UP_MS) throw new Error(`${until}: ${rows[0].count} jobs have not ended`);
    await pause(250);
  }
}

/** Drafts and approves all, and asks for the mails. */
async function makeReports(admin, url, organizations) {
  for (const { cookie } of organizations)
    await send(url, cookie, 'mutation { draftReports(fromOn: "2026-06-01", untilOn: "2026-06-30") { id } }');
  await untilIdle(admin, 'drafts', Date.now());
  for (const { cookie } of organizations) {
    const { waterReports } = await send(url, cookie, '{ waterReports { id } }');
    await send(url, cookie, 'mutation($ids: [ID!]!) { approveReports(ids: $ids) { id } }', { ids: waterReports.map(({ id }) => id) });
  }
  await untilIdle(admin, 'approvals', Date.now());
  for (const { cookie } of organizations) {
    const { waterReports } = await send(url, cookie, '{ waterReports { id state } }');
    if (waterReports.some(({ state }) => state !== 'approved')) throw new Error('a report was not approved');
    await send(url, cookie, 'mutation($ids: [ID!]!) { sendReports(ids: $ids) { id } }', { ids: waterReports.map(({ id }) => id) });
  }
}

/** Waits until every mail has ended; the minutes between tries are not waited for. */
async function untilAllEnded(admin, begun, onHalf) {
  let isHalf = false;
  for (;;) {
    const { rows } = await admin.query(
      `select count(*)::int as total, count(*) filter (where state in ('queued', 'sending'))::int as open from report_mail`,
    );
    const [{ total, open }] = rows;
    if (open === 0) return total;
    if (Date.now() - begun > GIVE_UP_MS) throw new Error(`${open} of ${total} mails had not ended after ${GIVE_UP_MS / 1000} s`);
    if (!isHalf && open < total * 0.6) {
      isHalf = true;
      await onHalf();
    }
    await admin.query(`update report_mail set next_try_at = now() where state = 'queued' and next_try_at > now()`);
    await admin.query(`update graphile_worker._private_jobs set run_at = now() where run_at > now() and locked_at is null`);
    await pause(500);
  }
}

/** What is wrong with how the mails ended. */
function faultsOf(mails, kept, wanted) {
  const faults = mails.length === wanted ? [] : [`${mails.length} mails, not ${wanted}`];
  for (const { recipient, state } of mails) {
    const got = kept.get(recipient) ?? 0;
    if (got > 1) faults.push(`${recipient} got ${got}`);
    if (state === 'sent' && got !== 1) faults.push(`${recipient} is said to be sent, and got ${got}`);
    if (state === 'refused' && got !== 0) faults.push(`${recipient} is said to be refused, and got ${got}`);
    if (!['sent', 'refused', 'unknown'].includes(state)) faults.push(`${recipient} is ${state}`);
  }
  return faults;
}

export async function prove([wish = String(MAILS), seed = '20261130'] = []) {
  const clients = Math.round(Number(wish) / ORGANIZATIONS / MAILS_OF_CLIENT);
  if (!(clients > 0)) throw new Error(`${wish}: give a number of mails, ${ORGANIZATIONS * MAILS_OF_CLIENT} or more`);
  const wanted = clients * ORGANIZATIONS * MAILS_OF_CLIENT;
  const smtp = await faultyServer(randomOf(Number(seed)));
  try {
    return await inTemporaryProduct({}, async ({ admin, database }) => {
      const organizations = [];
      for (let at = 0; at < ORGANIZATIONS; at += 1) organizations.push(await anOrganization(admin, at, clients));
      const servers = [await startServer(database.adminUrl, smtp.url), await startServer(database.adminUrl, smtp.url)];
      try {
        await makeReports(admin, servers[0].url, organizations);
        const begun = Date.now();
        await untilAllEnded(admin, begun, async () => {
          servers[0].child.kill('SIGKILL');
          servers.push(await startServer(database.adminUrl, smtp.url));
        });
        const seconds = ((Date.now() - begun) / 1000).toFixed(0);
        const { rows: mails } = await admin.query('select recipient, state, answer, attempts from report_mail');
        const faults = faultsOf(mails, smtp.kept, wanted);
        if (faults.length) throw new Error(`${faults.length} faults: ${faults.slice(0, 8).join('; ')}`);
        const count = (state) => mails.filter((mail) => mail.state === state).length;
        const arrived = mails.filter(({ state, recipient }) => state === 'unknown' && smtp.kept.has(recipient)).length;
        const tries = mails.reduce((sum, { attempts }) => sum + attempts, 0);
        const played = Object.entries(smtp.fates).map(([name, times]) => `${name} ${times}`);
        return `${mails.length} mails by two servers of the product, one killed in the middle, in ${seconds} s and ${tries} tries (seed ${seed}): ${count('sent')} sent, each kept once by the mail server; ${count('refused')} refused, kept by nobody; ${count('unknown')} listed as unknown, of which ${arrived} had arrived; none lost, none twice. Faults: ${played.join(', ')}`;
      } finally {
        for (const { child } of servers) child.kill('SIGKILL');
      }
    });
  } finally {
    await smtp.close();
  }
}
