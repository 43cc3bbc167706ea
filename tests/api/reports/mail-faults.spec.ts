import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { simpleParser } from 'mailparser';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { organizationActor } from '../../../apps/api/src/platform/database/actor.js';
import { inTransaction } from '../../../apps/api/src/platform/database/organization-transaction.js';
import { Jobs } from '../../../apps/api/src/platform/jobs/jobs.js';
import { mailSettings, mailWarnings } from '../../../apps/api/src/features/reports/posting/mail-settings.js';
import { insertRow } from '../../support/builders.js';
import { type TestApp, startApp } from '../../support/test-app.js';
import { codeOf, type FieldDay, fieldDay } from '../fieldwork/field-day.js';
import { approvedReport } from './approved-report.js';

let product: TestApp;
let day: FieldDay;
const folder = mkdtempSync(path.join(tmpdir(), 'rillbook-faults-'));

beforeAll(async () => {
  process.env['DATA_DIR'] = folder;
  product = await startApp();
  day = await fieldDay(product, null);
});
afterEach(() => {
  delete process.env['SMTP_URL'];
  process.env['DATA_DIR'] = folder;
});
afterAll(async () => {
  delete process.env['DATA_DIR'];
  await product.close();
  rmSync(folder, { recursive: true, force: true });
});

const approved = (emails: readonly string[], columns: object = {}) => approvedReport(product, day, emails, columns);
const send = (id: string) => day.office.send('mutation($ids: [ID!]!) { sendReports(ids: $ids) { id state } }', { ids: [id] });
const mailsOf = async (id: string) =>
  (await day.office.send('query($id: ID!) { waterReport(id: $id) { mails { recipient state answer attempts } } }', { id })).data.waterReport
    .mails;

it('a mail that never left this server is tried again, and nobody is asked whether it arrived', async () => {
  const { id } = await approved(['ana@example.test']);
  // The folder of the outbox cannot be made where a file has its name.
  const full = mkdtempSync(path.join(tmpdir(), 'rillbook-full-'));
  writeFileSync(path.join(full, 'rillbook-outbox'), '');
  process.env['DATA_DIR'] = full;
  await send(id);
  await product.drain();
  expect(await mailsOf(id)).toEqual([
    { recipient: 'ana@example.test', state: 'queued', answer: expect.stringMatching(/^not-handed-over: /), attempts: 1 },
  ]);
  process.env['SMTP_URL'] = 'mail.example.test:587';
  await send(id);
  await product.drain();
  expect(await mailsOf(id)).toMatchObject([
    { state: 'queued', answer: 'not-handed-over: SMTP_URL is no address of a mail server', attempts: 2 },
  ]);
  delete process.env['SMTP_URL'];
  process.env['DATA_DIR'] = folder;
  await send(id);
  await product.drain();
  expect(await mailsOf(id)).toMatchObject([{ state: 'sent', attempts: 3 }]);
  rmSync(full, { recursive: true });
});

it('says at start what of the mail’s settings is none, and takes a sender’s address with a name before it', () => {
  const links = { PUBLIC_URL: 'https://water.example.test' };
  expect(mailWarnings({ ...links, SMTP_URL: 'mail.example.test:587' })).toEqual([
    expect.stringMatching(/^SMTP_URL is no address of a mail server/),
  ]);
  expect(mailWarnings({ ...links, SMTP_URL: 'smtps://mail.example.test', SMTP_FROM: 'the office' })).toEqual([
    expect.stringMatching(/^SMTP_FROM is "the office", which is no e-mail address/),
  ]);
  expect(mailSettings({ SMTP_FROM: 'Water reports <reports@example.test>' }).from).toBe('reports@example.test');
  expect(mailSettings({ SMTP_FROM: 'reports@example.test' }).from).toBe('reports@example.test');
});

it('an address that the client has taken away since is not mailed', async () => {
  const { id, clientId } = await approved(['left@example.test', 'Stays@example.test']);
  await send(id);
  await product.database.admin(`update client set emails = array['stays@example.test'] where id = $1`, [clientId]);
  // What was refused of an address that is none any more waits for nobody.
  const refused = { organization_id: day.organizationId, report_id: id, recipient: 'gone@example.test', state: 'refused' };
  await insertRow(product.database, 'report_mail', { ...refused, answer: '550 no such user', attempts: 1 });
  await product.drain();
  expect(await mailsOf(id)).toEqual([
    expect.objectContaining({ recipient: 'Stays@example.test', state: 'sent' }),
    { recipient: 'gone@example.test', state: 'refused', answer: 'address-gone', attempts: 1 },
    { recipient: 'left@example.test', state: 'refused', answer: 'address-gone', attempts: 0 },
  ]);
});

it('a client that is none any more is not mailed what was to go to them', async () => {
  const { id, clientId } = await approved(['former@example.test']);
  await send(id);
  await product.database.admin('update client set retired_at = now() where id = $1', [clientId]);
  await product.drain();
  expect(await mailsOf(id)).toMatchObject([{ state: 'refused', answer: 'address-gone', attempts: 0 }]);
});

it('what may have arrived is not taken back, though it waits to be sent again; two who say so at once send it once', async () => {
  const { id } = await approved(['perhaps@example.test']);
  await send(id);
  await product.database.admin(`update report_mail set state = 'sending' where report_id = $1`, [id]);
  await product.drain();
  const [mail] = await product.database.admin<{ id: string; state: string }>('select id, state from report_mail where report_id = $1', [
    id,
  ]);
  expect(mail!.state).toBe('unknown');
  process.env['SMTP_URL'] = 'no server';
  const AGAIN = 'mutation($id: ID!) { settleMail(id: $id, found: sendAgain) { state } }';
  const said = await Promise.all([1, 2].map(() => day.office.send(AGAIN, { id: mail!.id })));
  expect(said.map(({ data, errors }) => data?.settleMail.state ?? errors[0]!.extensions.code).sort()).toEqual(['MAIL_NOT_OPEN', 'queued']);
  await product.drain();
  expect(await mailsOf(id)).toMatchObject([{ state: 'queued', attempts: 1 }]);
  const { data } = await day.office.send('query($id: ID!) { waterReport(id: $id) { version } }', { id });
  const reopened = await day.office.send('mutation($id: ID!, $version: Int!) { reopenReport(id: $id, version: $version) { __typename } }', {
    id,
    version: data.waterReport.version,
  });
  expect(codeOf(reopened)).toBe('REPORT_ALREADY_OUT');
});

it('a note’s lines stay apart in the mail’s HTML, which says its language', async () => {
  const { id, clientId } = await approved(['lines@example.test'], { language: 'es' });
  await product.database.admin(`update water_report set state = 'draft', note = $2 where id = $1`, [id, 'Uno <b>\n\nDos']);
  await day.office.send('mutation($id: ID!) { approveReport(id: $id, version: 2) { __typename } }', { id });
  expect(clientId).toBeTruthy();
  await send(id);
  await product.drain();
  const outbox = path.join(folder, 'rillbook-outbox', day.organizationId);
  const mails = await Promise.all(readdirSync(outbox).map((name) => simpleParser(readFileSync(path.join(outbox, name)))));
  const mail = mails.find(({ to }) => (to as { text: string }).text === 'lines@example.test');
  expect(mail?.html).toContain('<p>Uno &lt;b&gt;<br><br>Dos</p>');
  expect(mail?.html).toMatch(/^<div lang="es"/);
});

it('an answer that is changed while its mail is under way has a mail of its own', async () => {
  const { id, clientId } = await approved([]);
  const question = { organization_id: day.organizationId, client_id: clientId, report_id: id, question: 'Why?', email: 'ana@example.test' };
  const { id: asked } = await insertRow(product.database, 'client_question', question);
  const ANSWER = 'mutation($id: ID!, $answer: String!) { answerQuestion(id: $id, answer: $answer) { mailState } }';
  // A server that takes its time: the answer is changed before it has said what became of the first mail.
  const { createServer } = await import('node:net');
  const slow = createServer((socket) => {
    socket.write('220 slow\r\n');
    socket.once('data', () => {
      void day.office.send(ANSWER, { id: asked, answer: 'Because of a leak, which is mended.' }).then(
        () => socket.end('554 not here\r\n'),
        () => socket.destroy(),
      );
    });
    socket.on('error', () => undefined);
  });
  await new Promise<void>((done) => slow.listen(0, '127.0.0.1', done));
  process.env['SMTP_URL'] = `smtp://127.0.0.1:${(slow.address() as { port: number }).port}`;
  await day.office.send(ANSWER, { id: asked, answer: 'Because of a leak.' });
  await product.drain();
  slow.close();
  const [row] = await product.database.admin<{ mail_state: string; answer: string }>(
    'select mail_state, answer from client_question where id = $1',
    [asked],
  );
  expect(row).toEqual({ mail_state: 'queued', answer: 'Because of a leak, which is mended.' });
});

it('a name of the office is one line that fits the head of a page', async () => {
  const BRAND = 'mutation($input: ReportBrandInput!) { changeReportBrand(input: $input) { name contact } }';
  for (const name of ['x'.repeat(81), 'Meadow\r\nBcc: evil@example.test'])
    expect(codeOf(await day.owner.send(BRAND, { input: { name } }))).toBe('VALUE_REFUSED');
  expect(codeOf(await day.owner.send(BRAND, { input: { contact: 'a\nb\nc\nd\ne' } }))).toBe('VALUE_REFUSED');
  const kept = { name: 'Meadow & Daughters', contact: '(555) 010-0142\noffice@meadow.example.test' };
  expect((await day.owner.send(BRAND, { input: kept })).data.changeReportBrand).toEqual(kept);
});

it('what is sent with one press is told of together: how far it is, how many lie in the outbox folder, and until when it waits', async () => {
  const ids: string[] = [];
  for (const name of ['first', 'second', 'third']) ids.push((await approved([`${name}@example.test`])).id);
  const press = 'mutation($ids: [ID!]!, $onDay: Date) { sendReports(ids: $ids, onDay: $onDay) { id } }';
  const newest = async () => (await day.office.send('{ jobs { kind state done total waitsUntil outcome { code details } } }')).data.jobs[0];
  await day.office.send(press, { ids, onDay: '2099-01-15' });
  expect(await newest()).toMatchObject({
    kind: 'send report',
    state: 'queued',
    done: 0,
    total: 3,
    waitsUntil: expect.stringMatching(/^2099-01-15T/),
  });
  await day.office.send(press, { ids });
  expect(await newest()).toMatchObject({ kind: 'send report', state: 'queued', done: 0, total: 3, waitsUntil: null });
  await product.drain();
  expect(await newest()).toEqual({
    ...{ kind: 'send report', state: 'done', done: 3, total: 3, waitsUntil: null },
    outcome: { code: 'mailed', details: { sent: 0, written: 3, total: 3, open: 0, failed: 0 } },
  });
});

it('what is to be tried again after one press is told of together too', async () => {
  const full = mkdtempSync(path.join(tmpdir(), 'rillbook-again-'));
  writeFileSync(path.join(full, 'rillbook-outbox'), '');
  process.env['DATA_DIR'] = full;
  const ids: string[] = [];
  for (let at = 0; at < 2; at += 1) ids.push((await approved([`again-${at}@example.test`])).id);
  await day.office.send('mutation($ids: [ID!]!) { sendReports(ids: $ids) { id } }', { ids });
  await product.drain();
  const { jobs } = (await day.office.send('{ jobs { kind state done total waitsUntil outcome { details } } }')).data;
  expect(jobs.slice(0, 2)).toMatchObject([
    { kind: 'send report', state: 'queued', done: 0, total: 2, waitsUntil: expect.any(String), outcome: null },
    { kind: 'send report', state: 'done', done: 2, total: 2, waitsUntil: null, outcome: { details: { total: 2, open: 2, sent: 0 } } },
  ]);
  rmSync(full, { recursive: true });
});

it('a press of more than two thousand is counted whole, and is open again where more of it is asked for', async () => {
  const batch = 'a large press';
  const { id: reportId } = await approved([]);
  await product.database.admin(
    `insert into background_job (organization_id, kind, state, payload, batch, leads, outcome)
      select $1, 'send report', case when at = 2100 then 'queued' else 'done' end, jsonb_build_object('batch', $2::text, 'reportId', $3::text), $2, at = 1,
        case when at < 2100 then '{"code": "mailed", "details": {"sent": 2}}'::jsonb end from generate_series(1, 2100) as at`,
    [day.organizationId, batch, reportId],
  );
  const newest = async () => (await day.office.send('{ jobs { state done total outcome { details } } }')).data.jobs[0];
  expect(await newest()).toEqual({ state: 'running', done: 2099, total: 2100, outcome: null });
  const [last] = await product.database.admin<{ id: string }>(`select id from background_job where batch = $1 and state = 'queued'`, [
    batch,
  ]);
  const jobs = product.app.get(Jobs);
  await jobs.run(day.organizationId, last!.id);
  expect(await newest()).toMatchObject({ state: 'done', done: 2100, total: 2100, outcome: { details: { sent: 4198, failed: 0 } } });
  await inTransaction(product.source, organizationActor(day.organizationId, 'job'), (tx) =>
    jobs.ask(tx, 'send report', { reportId, batch }),
  );
  expect(await newest()).toMatchObject({ state: 'running', done: 2100, total: 2101 });
});
