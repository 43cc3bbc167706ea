import { randomUUID } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { simpleParser } from 'mailparser';
import { SMTPServer } from 'smtp-server';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aProperty, insertRow } from '../../support/builders.js';
import { type TestApp, startApp } from '../../support/test-app.js';
import { type FieldDay, assign, codeOf, fieldDay } from '../fieldwork/field-day.js';
import { approvedReport } from './approved-report.js';

// A server of its own: what it is told to say to an address is in the address.
const got: { to: string; raw: Buffer }[] = [];
const server = new SMTPServer({
  authOptional: true,
  disabledCommands: ['STARTTLS'],
  onMailFrom: ({ address }, _session, answer) => {
    if (address.startsWith('unset@')) answer(Object.assign(new Error('Authentication required'), { responseCode: 530 }));
    else answer();
  },
  onRcptTo: ({ address }, _session, answer) => {
    if (address.startsWith('no-')) answer(Object.assign(new Error('no such mailbox'), { responseCode: 550 }));
    else if (address.startsWith('later-')) answer(Object.assign(new Error('try later'), { responseCode: 451 }));
    else answer();
  },
  onData: (stream, session, answer) => {
    const pieces: Buffer[] = [];
    stream.on('data', (piece: Buffer) => pieces.push(piece));
    stream.on('end', () => {
      const to = session.envelope.rcptTo[0]!.address;
      got.push({ to, raw: Buffer.concat(pieces) });
      // It has the mail, and the answer is lost.
      const open = (server as unknown as { connections: Set<{ _socket: { destroy(): void } }> }).connections;
      if (to.startsWith('lost-')) for (const one of open) one._socket.destroy();
      else answer();
    });
  },
});

let product: TestApp;
let day: FieldDay;
const outbox = mkdtempSync(path.join(tmpdir(), 'rillbook-mail-'));
const MAILS = 'id state approvedAt sentAt mails { id recipient state attempts answer }';

beforeAll(async () => {
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  process.env['DATA_DIR'] = outbox;
  process.env['PUBLIC_URL'] = 'https://water.example.test/';
  process.env['SMTP_FROM'] = 'reports@meadow.example.test';
  product = await startApp();
  day = await fieldDay(product, null);
});
afterAll(async () => {
  for (const name of ['DATA_DIR', 'PUBLIC_URL', 'SMTP_FROM', 'SMTP_URL']) delete process.env[name];
  await product.close();
  await new Promise<void>((done) => server.close(done));
  rmSync(outbox, { recursive: true, force: true });
});

const approved = (emails: readonly string[], columns: object = {}) => approvedReport(product, day, emails, columns);

const send = async (id: string, onDay: string | null = null) =>
  day.office.send('mutation($ids: [ID!]!, $onDay: Date) { sendReports(ids: $ids, onDay: $onDay) { id state sendAt } }', {
    ids: [id],
    onDay,
  });
const report = async (id: string) =>
  (await day.office.send(`query($id: ID!) { waterReport(id: $id) { ${MAILS} } }`, { id })).data.waterReport;
const states = async (id: string) =>
  Object.fromEntries((await report(id)).mails.map((mail: { recipient: string; state: string }) => [mail.recipient, mail.state]));

describe('without a mail server', () => {
  it('mails are written into the outbox folder, whole, with a way to stop them', async () => {
    await insertRow(product.database, 'report_brand', {
      organization_id: day.organizationId,
      contact: '(555) 010-0142, office@meadow.example.test.',
    });
    const { id } = await approved(['ana@example.test', 'bo@example.test'], { language: 'es', units: 'metric' });
    await send(id);
    await product.drain();
    expect(await report(id)).toMatchObject({ state: 'sent', sentAt: expect.any(String) });
    const folder = path.join(outbox, 'rillbook-outbox', day.organizationId);
    const mails = await Promise.all(readdirSync(folder).map((name) => simpleParser(readFileSync(path.join(folder, name)))));
    expect(mails.map((mail) => (mail.to as { text: string }).text).sort()).toEqual(['ana@example.test', 'bo@example.test']);
    const [mail] = mails;
    expect(mail!.subject).toMatch(/^Informe de agua, junio de 2026/);
    expect(mail!.text).toMatch(/m³/);
    expect(mail!.html).toContain('<h1');
    expect(mail!.replyTo?.text).toBe('office@meadow.example.test');
    expect(mail!.attachments.map(({ contentType, content }) => [contentType, content.subarray(0, 5).toString()])).toEqual([
      ['application/pdf', '%PDF-'],
    ]);
    expect(mail!.headerLines.find(({ key }) => key === 'list-unsubscribe-post')?.line).toMatch(/: List-Unsubscribe=One-Click$/);
    const [, link] = /https:\/\/water\.example\.test(\/api\/stop-reports\/\S+)/.exec(mail!.text ?? '') ?? [];
    // A look changes nothing; a POST does.
    expect((await fetch(`${product.url}${link}`)).status).toBe(200);
    expect(await product.database.admin('select from mail_stop')).toHaveLength(0);
    expect((await fetch(`${product.url}${link}`, { method: 'POST' })).status).toBe(200);
    expect(await product.database.admin('select email from mail_stop')).toEqual([{ email: (mail!.to as { text: string }).text }]);
  });

  it('a mail program is asked to stop with one press only where nobody reads the press on its way', async () => {
    process.env['PUBLIC_URL'] = 'http://water.example.test/';
    try {
      const { id } = await approved(['cy@example.test']);
      await send(id);
      await product.drain();
    } finally {
      process.env['PUBLIC_URL'] = 'https://water.example.test/';
    }
    const folder = path.join(outbox, 'rillbook-outbox', day.organizationId);
    const mails = await Promise.all(readdirSync(folder).map((name) => simpleParser(readFileSync(path.join(folder, name)))));
    const keys = mails.find((mail) => (mail.to as { text: string }).text === 'cy@example.test')!.headerLines.map(({ key }) => key);
    expect(keys).toContain('list-unsubscribe');
    expect(keys).not.toContain('list-unsubscribe-post');
  });

  it('a client without an address gets the report on their own page', async () => {
    const { id, clientId } = await approved([]);
    expect((await send(id)).data.sendReports).toMatchObject([{ state: 'sent' }]);
    const client = await product.somebody(day.organizationId, 'client', clientId);
    expect((await client.send('{ waterReports { id content { verdict } mails { id } links { id } } }')).data.waterReports).toEqual([
      { id, content: { verdict: expect.stringMatching(/^In June 2026/) }, mails: [], links: [] },
    ]);
  });
});

describe('with a mail server', () => {
  beforeAll(() => {
    const { port } = server.server.address() as AddressInfo;
    process.env['SMTP_URL'] = `smtp://127.0.0.1:${port}`;
  });

  it('a no is kept, a not-now is tried again, a lost answer is unknown and not sent again by itself', async () => {
    const { id } = await approved(['yes@example.test', 'no-x@example.test', 'later-x@example.test', 'lost-x@example.test']);
    await send(id);
    await product.drain();
    expect(await states(id)).toEqual({
      'yes@example.test': 'sent',
      'no-x@example.test': 'refused',
      'later-x@example.test': 'queued',
      'lost-x@example.test': 'unknown',
    });
    await product.database.admin('update report_mail set next_try_at = now()');
    await send(id);
    await product.drain();
    expect(got.filter(({ to }) => to === 'yes@example.test')).toHaveLength(1);
    expect(got.filter(({ to }) => to === 'lost-x@example.test')).toHaveLength(1);
    const lost = (await report(id)).mails.find(({ state }: { state: string }) => state === 'unknown');
    const found = await day.office.send('mutation($id: ID!) { settleMail(id: $id, found: arrived) { state } }', { id: lost.id });
    expect(found.data.settleMail).toEqual({ state: 'sent' });
    expect(codeOf(await day.office.send('mutation($id: ID!) { settleMail(id: $id, found: arrived) { state } }', { id: lost.id }))).toBe(
      'MAIL_NOT_OPEN',
    );
  });

  it('what a worker began and never ended is unknown', async () => {
    const { id } = await approved(['begun@example.test']);
    await send(id);
    await product.database.admin(`update report_mail set state = 'sending' where report_id = $1`, [id]);
    await product.drain();
    expect(await states(id)).toEqual({ 'begun@example.test': 'unknown' });
    expect(got.filter(({ to }) => to === 'begun@example.test')).toEqual([]);
    // What may have reached somebody is not taken back.
    expect(codeOf(await day.office.send('mutation($id: ID!) { reopenReport(id: $id, version: 3) { __typename } }', { id }))).toBe(
      'REPORT_ALREADY_OUT',
    );
  });

  it('waits for the morning where the property lies', async () => {
    const { id } = await approved(['morning@example.test']);
    // Los Angeles is 8 hours behind UTC in January.
    expect((await send(id, '2099-01-15')).data.sendReports).toMatchObject([{ state: 'approved', sendAt: '2099-01-15T15:00:00.000Z' }]);
    await product.drain();
    expect(await states(id)).toEqual({ 'morning@example.test': 'queued' });
    // A new day takes effect for what waits, and so does now.
    await send(id, '2099-07-15');
    const WAITS = 'select next_try_at::date::text as day from report_mail where report_id = $1';
    expect(await product.database.admin(WAITS, [id])).toEqual([{ day: '2099-07-15' }]);
    await send(id);
    await product.drain();
    expect(await states(id)).toEqual({ 'morning@example.test': 'sent' });
    expect(await send(id, '2020-01-15')).toMatchObject({
      errors: [{ message: expect.stringMatching(/^onDay: found "2020-01-15", expected today/) }],
    });
  });

  it('a report that nobody got is not sent: a refused mail goes again, one that came back waits for a word', async () => {
    const { id } = await approved(['no-one@example.test']);
    await send(id);
    await product.drain();
    expect(await states(id)).toEqual({ 'no-one@example.test': 'refused' });
    expect((await send(id)).data.sendReports).toMatchObject([{ state: 'approved' }]);
    await product.drain();
    expect(await report(id)).toMatchObject({ state: 'approved', mails: [{ state: 'refused', attempts: 1 }] });
    await product.database.admin(`update report_mail set state = 'bounced' where report_id = $1`, [id]);
    const answer = await send(id);
    expect(codeOf(answer)).toBe('REPORT_REACHES_NOBODY');
    expect(answer.errors![0]!.message).toContain('no-one@example.test (bounced)');
    // People know a report by its client and its days, not by its id.
    expect(answer.errors![0]!.message).toMatch(/the report of Client no-one@example\.test .*, 2026-06-01 to 2026-06-30/);
    expect(await report(id)).toMatchObject({ state: 'approved', sentAt: null });
  });

  it('who wants no more is named, is not mailed, and is mailed again when the office says that they asked', async () => {
    const { id } = await approved(['Stop@example.test', 'stop@EXAMPLE.test']);
    await insertRow(product.database, 'mail_stop', { organization_id: day.organizationId, email: 'stop@example.test' });
    const stopped = async () =>
      (await day.office.send('query($id: ID!) { waterReport(id: $id) { stoppedAddresses } }', { id })).data.waterReport.stoppedAddresses;
    expect(await stopped()).toEqual(['Stop@example.test']);
    expect((await send(id)).data.sendReports).toMatchObject([{ state: 'sent' }]);
    expect(await states(id)).toEqual({});
    await day.office.send('mutation { mailAgain(email: "STOP@example.test") }');
    expect(await stopped()).toEqual([]);
    await send(id);
    await product.drain();
    expect(await states(id)).toEqual({ 'Stop@example.test': 'sent' });
  });

  it('a fault of this server’s own settings is nobody’s no: the mail waits, and each try’s link to stop works', async () => {
    const { id } = await approved(['faulty@example.test']);
    process.env['SMTP_FROM'] = 'unset@meadow.example.test';
    await send(id);
    await product.drain();
    expect(await report(id)).toMatchObject({
      mails: [{ state: 'queued', attempts: 1, answer: expect.stringContaining('Authentication required') }],
    });
    const hash = async () =>
      (
        await product.database.admin<{ hash: string }>(`select encode(stop_hash, 'hex') as hash from report_mail where report_id = $1`, [
          id,
        ])
      )[0]!.hash;
    const first = await hash();
    process.env['SMTP_FROM'] = 'reports@meadow.example.test';
    await send(id);
    await product.drain();
    expect(await states(id)).toEqual({ 'faulty@example.test': 'sent' });
    expect(await hash()).not.toBe(first);
    const kept = `select encode(unnest(former_stop_hashes), 'hex') as hash from report_mail where report_id = $1`;
    expect(await product.database.admin(kept, [id])).toEqual([{ hash: first }]);
  });

  it('what was sent is not taken away; a new report of the same period corrects it', async () => {
    const { id, clientId } = await approved(['right@example.test']);
    await send(id);
    await product.drain();
    const RETIRE = 'mutation($id: ID!) { retireWaterReport(id: $id, version: 4) { __typename } }';
    expect(codeOf(await day.office.send(RETIRE, { id }))).toBe('REPORT_ALREADY_OUT');
    const draft = (fromOn: string, untilOn: string) =>
      day.office.send('mutation($input: WaterReportInput!) { createWaterReport(input: $input) { __typename } }', {
        input: { clientId, fromOn, untilOn },
      });
    expect((await draft('2026-06-01', '2026-06-30')).data.createWaterReport).toEqual({ __typename: 'WaterReport' });
    expect((await draft('2026-06-01', '2026-06-30')).data.createWaterReport).toEqual({ __typename: 'NameTaken' });
    expect((await draft('2099-06-01', '2099-06-30')).errors![0]!.message).toMatch(/^untilOn: found "2099-06-30", expected no month after/);
    expect((await draft('1900-01-01', '2026-06-30')).errors![0]!.message).toMatch(
      /^fromOn: found "1900-01-01", expected a period of 12 months/,
    );
  });
});

it('what was approved stays as it was seen, whatever is recorded later; a draft is not sent or shared', async () => {
  const { id } = await approved(['kept@example.test']);
  const reopened = await day.office.send('mutation($id: ID!) { reopenReport(id: $id, version: 2) { ... on WaterReport { version } } }', {
    id,
  });
  expect(reopened.data.reopenReport).toEqual({ version: 3 });
  const APPROVE =
    'mutation($id: ID!, $seen: String!) { approveReport(id: $id, version: 3, dataVersion: $seen) { ... on WaterReport { state } } }';
  expect(codeOf(await day.office.send(APPROVE, { id, seen: 'older' }))).toBe('REPORT_FIGURES_CHANGED');
  const draftOf = await day.office.send('query($id: ID!) { waterReport(id: $id) { state content { dataVersion } } }', { id });
  expect(draftOf.data.waterReport.state).toBe('draft');
  const seen = draftOf.data.waterReport.content.dataVersion;
  expect((await day.office.send(APPROVE, { id, seen })).data.approveReport).toEqual({ state: 'approved' });
  const CONTENT = 'query($id: ID!) { waterReport(id: $id) { content { dataVersion verdict figures { id shown } } } }';
  const before = (await day.office.send(CONTENT, { id })).data.waterReport.content;
  await product.database.admin(
    `update month_account set inputs_version = 'newer', detail = (select detail from month_account where month = '2026-05-01' limit 1) where month = '2026-06-01'`,
  );
  expect((await day.office.send(CONTENT, { id })).data.waterReport.content).toEqual(before);
  const draft = await day.office.send(
    'mutation($input: WaterReportInput!) { createWaterReport(input: $input) { ... on WaterReport { id } } }',
    {
      input: { clientId: day.clientId, fromOn: '2026-06-01', untilOn: '2026-06-30' },
    },
  );
  expect(codeOf(await send(draft.data.createWaterReport.id))).toBe('REPORT_NOT_APPROVED');
  expect(
    codeOf(await day.office.send('mutation($id: ID!) { shareReport(reportId: $id) { id } }', { id: draft.data.createWaterReport.id })),
  ).toBe('REPORT_NOT_APPROVED');
});

it('a link shows one report as page and files, is counted, and ends when it is taken back', async () => {
  const { id } = await approved(['link@example.test']);
  const made = await day.office.send('mutation($id: ID!) { shareReport(reportId: $id, days: 30) { id path expiresAt } }', { id });
  const { path: place, id: linkId } = made.data.shareReport;
  const page = await fetch(`${product.url}${place}`);
  const html = await page.text();
  expect([page.status, page.headers.get('content-type')]).toEqual([200, 'text/html; charset=utf-8']);
  expect(html).toContain('<svg');
  expect(html).not.toMatch(/ style=/);
  expect((await fetch(`${product.url}${place}/report.pdf`)).headers.get('content-type')).toBe('application/pdf');
  expect((await fetch(`${product.url}${place.slice(0, -3)}AAA`)).status).toBe(404);
  for (const file of ['report.pdf%00', '..%2freport.css', '__proto__']) {
    const none = await fetch(`${product.url}${place}/${file}`);
    expect([file, none.status, (await none.text()).includes('This link does not work')]).toEqual([file, 404, true]);
  }
  const links = async () =>
    (await day.office.send('query($id: ID!) { waterReport(id: $id) { links { id visits downloads revokedAt path } } }', { id })).data
      .waterReport.links;
  expect(await links()).toEqual([{ id: linkId, visits: 1, downloads: 1, revokedAt: null, path: null }]);
  await day.office.send('mutation($id: ID!) { revokeShareLink(id: $id) { id } }', { id: linkId });
  expect((await fetch(`${product.url}${place}`)).status).toBe(404);
  expect((await fetch(`${product.url}${place}/report.csv`)).status).toBe(404);
});

it('a link asked for twice at once under its name is one, with one secret, of which nothing is kept that opens it', async () => {
  const { id } = await approved(['twice@example.test']);
  const name = randomUUID();
  const share = (reportId: string, days = 60) =>
    day.office.send(
      'mutation($id: ID!, $days: Int!, $name: ID!) { shareReport(reportId: $id, days: $days, deviceRecordId: $name) { id path } }',
      {
        id: reportId,
        days,
        name,
      },
    );
  const [one, other] = (await Promise.all([share(id), share(id)])).map(({ data }) => data.shareReport);
  expect(other).toEqual(one);
  expect((await fetch(`${product.url}${one.path}`)).status).toBe(200);
  const rows = await product.database.admin('select row_to_json(share_link)::text as all from share_link where report_id = $1', [id]);
  expect(rows).toHaveLength(1);
  expect(rows[0]!['all']).not.toContain(name);
  expect(codeOf(await share(id, 30))).toBe('VALUE_REFUSED');
  await day.office.send('mutation($id: ID!) { revokeShareLink(id: $id) { id } }', { id: one.id });
  expect((await share(id)).data.shareReport).toEqual({ id: one.id, path: null });
});

it('drafts come for all clients in one go, once', async () => {
  const draftAll = async () => {
    const asked = await day.office.send('mutation { draftReports(fromOn: "2026-04-01", untilOn: "2026-06-30") { id } }');
    await product.drain();
    return (await day.office.send('query($id: ID!) { job(id: $id) { state says done total } }', { id: asked.data.draftReports.id })).data
      .job;
  };
  const first = await draftAll();
  expect(first).toMatchObject({ state: 'done', done: first.total });
  expect(first.says).toBe(`${first.total} drafts made, 0 clients had one`);
  expect((await draftAll()).says).toBe(`0 drafts made, ${first.total} clients had one`);
});

it('a client asks, the office answers; a client says yes to what waits for it, on their own properties alone', async () => {
  const client = await product.somebody(day.organizationId, 'client', day.clientId);
  const own = await aProperty(product.database, day.organizationId, { client_id: day.clientId });
  const other = await aProperty(product.database, day.organizationId);
  const asked = await client.send('mutation($id: ID!) { askOffice(question: " Why so much? ", propertyId: $id) { id question } }', {
    id: own.id,
  });
  expect(asked.data.askOffice.question).toBe('Why so much?');
  expect(
    codeOf(await client.send('mutation($id: ID!) { askOffice(question: "And here?", propertyId: $id) { id } }', { id: other.id })),
  ).toBe('NOT_FOUND');
  await day.office.send('mutation($id: ID!) { answerQuestion(id: $id, answer: "A valve stuck.") { id } }', { id: asked.data.askOffice.id });
  expect((await client.send('{ clientQuestions { question answer } }')).data.clientQuestions).toEqual([
    { question: 'Why so much?', answer: 'A valve stuck.' },
  ]);
  const waits = {
    organization_id: day.organizationId,
    kind: 'upgrade',
    state: 'waiting for approval',
    what: 'Drip line',
    labour_hours: 4,
    labour_rate: 90,
  };
  const mine = await insertRow(product.database, 'work_order', { ...waits, property_id: own.id });
  const theirs = await insertRow(product.database, 'work_order', { ...waits, property_id: other.id });
  const plants = await day.finding(own.id, { kind: 'mixed water needs', says: { code: 'mixed water needs', details: {} } });
  expect((await client.send('{ recommendations { id from } }')).data.recommendations).toEqual(
    expect.arrayContaining([
      { id: mine.id, from: 'work order' },
      { id: plants.id, from: 'finding' },
    ]),
  );
  expect(codeOf(await client.send('mutation($id: ID!) { approveRecommended(id: $id) { id } }', { id: theirs.id }))).toBe('NOT_FOUND');
  expect(codeOf(await day.office.send('mutation($id: ID!) { approveRecommended(id: $id) { id } }', { id: mine.id }))).toBe('NOT_ALLOWED');
  await client.send('mutation($id: ID!) { approveRecommended(id: $id) { id } }', { id: mine.id });
  const left = await client.send('mutation($id: ID!) { approveRecommended(id: $id) { id kind what } }', { id: plants.id });
  // What has no price is not approved by a yes: an offer of it is wanted, and waits for its price.
  const [offer] = left.data.approveRecommended;
  // What it says in the product's own words the page says in the reader's language.
  expect(left.data.approveRecommended).toEqual([{ id: expect.not.stringContaining(plants.id), kind: 'mixed water needs', what: '' }]);
  expect(codeOf(await client.send('mutation($id: ID!) { approveRecommended(id: $id) { id } }', { id: offer.id }))).toBe('OFFER_NOT_MADE');
  expect((await assign(day.office, { id: offer.id, version: 1 }, day.crewId, '2099-07-06')).data.assignWorkOrder.state).toBe(
    'waiting for approval',
  );
  const orders = await product.database.admin(
    'select kind, state, approved_by from work_order where property_id = $1 order by created_at, approved_by nulls last',
    [own.id],
  );
  expect(orders).toEqual([
    { kind: 'upgrade', state: 'open', approved_by: client.personId },
    { kind: 'upgrade', state: 'waiting for approval', approved_by: null },
  ]);
  expect(
    codeOf(await day.office.send('mutation($id: ID!) { approveWorkOrder(id: $id, version: 1) { __typename } }', { id: offer.id })),
  ).toBe('WORK_ORDER_NOT_PRICED');
  // The price is the offer, however small: the client has not agreed to it yet.
  const price = { propertyId: own.id, kind: 'upgrade', what: 'Separate lines', labourHours: 1, labourRate: 80 };
  for (const version of [1, 2]) {
    const priced = await day.office.send(
      'mutation($id: ID!, $version: Int!, $input: WorkOrderInput!) { changeWorkOrder(id: $id, version: $version, input: $input) { ... on WorkOrder { state cost } } }',
      { id: offer.id, version, input: price },
    );
    expect(priced.data.changeWorkOrder).toEqual({ state: 'waiting for approval', cost: 80 });
  }
  expect((await assign(day.office, { id: offer.id, version: 2 }, day.crewId, '2031-07-07')).data.assignWorkOrder.state).toBe(
    'waiting for approval',
  );
  // A yes is to the price that was looked at: here it was named after the client had opened the page.
  const YES = 'mutation($id: ID!, $version: Int) { approveRecommended(id: $id, version: $version) { id } }';
  expect(codeOf(await client.send(YES, { id: offer.id, version: 1 }))).toBe('OFFER_CHANGED');
  expect((await client.send(YES, { id: offer.id, version: 2 })).data.approveRecommended).toEqual([]);
  expect((await assign(day.office, { id: offer.id, version: 3 }, day.crewId, '2031-07-07')).data.assignWorkOrder.state).toBe('given out');
});

it('whoever has a link may ask about its report, and reaches nothing else; the office answers, and the client reads it', async () => {
  const { id, clientId } = await approved(['asker@example.test']);
  const other = await approved(['other@example.test']);
  const made = await day.office.send('mutation($id: ID!) { shareReport(reportId: $id) { path } }', { id });
  const place = `${product.url}${made.data.shareReport.path}`;
  const ask = (question: string) => fetch(`${place}/question`, { method: 'POST', body: new URLSearchParams({ question }) });
  const answer = await ask('When is the <b>leak</b> mended?');
  expect([answer.status, await answer.text()]).toEqual([200, expect.stringContaining('Your question has reached the office.')]);
  expect((await ask('  ')).status).toBe(400);
  const QUESTIONS = '{ clientQuestions { id clientId clientName about reportId question answer } }';
  const [asked] = (await day.office.send(QUESTIONS)).data.clientQuestions;
  expect(asked).toMatchObject({ clientId, reportId: id, question: 'When is the <b>leak</b> mended?', answer: null });
  await day.office.send('mutation($id: ID!) { answerQuestion(id: $id, answer: "On Friday.") { id } }', { id: asked.id });
  const client = await product.somebody(day.organizationId, 'client', clientId);
  expect((await client.send('{ clientQuestions { answer } }')).data.clientQuestions).toEqual([{ answer: 'On Friday.' }]);
  // Another client, by their own sign-in or by the link's key, sees none of it.
  const stranger = await product.somebody(day.organizationId, 'client', other.clientId);
  expect((await stranger.send('{ clientQuestions { id } }')).data.clientQuestions).toEqual([]);
  expect((await stranger.send('query($id: ID!) { waterReport(id: $id) { id } }', { id })).data.waterReport).toBeNull();
  expect((await fetch(`${product.url}/api/reports/${id}/report.pdf`, { headers: { cookie: stranger.cookie } })).status).toBe(404);
  expect(codeOf(await stranger.send('mutation($id: ID!) { askOffice(question: "?", reportId: $id) { id } }', { id }))).toBe('NOT_FOUND');
  expect((await fetch(`${place}/../../reports/${other.id}/report.pdf`)).status).toBe(401);
  const font = await fetch(`${place}/public-sans-latin-400.ttf`);
  expect([font.status, font.headers.get('content-type')]).toEqual([200, 'font/ttf']);
  for (let more = 0; more < 19; more += 1) expect((await ask(`And then? ${more}`)).status).toBe(200);
  const full = await ask('And then?');
  expect([full.status, full.headers.get('retry-after'), await full.text()]).toEqual([
    429,
    '86400',
    expect.stringMatching(/ask again tomorrow\..*pregunte otra vez mañana\./s),
  ]);
});
