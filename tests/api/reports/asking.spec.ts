import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { simpleParser } from 'mailparser';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { mailSettings, mailWarnings } from '../../../apps/api/src/features/reports/posting/mail-settings.js';
import { insertRow } from '../../support/builders.js';
import { type TestApp, startApp } from '../../support/test-app.js';
import { type FieldDay, codeOf, fieldDay } from '../fieldwork/field-day.js';
import { anAccountedProperty } from './accounted-property.js';

let product: TestApp;
let day: FieldDay;
const outbox = mkdtempSync(path.join(tmpdir(), 'rillbook-answers-'));

beforeAll(async () => {
  process.env['DATA_DIR'] = outbox;
  product = await startApp();
  day = await fieldDay(product);
});
afterAll(async () => {
  delete process.env['DATA_DIR'];
  await product.close();
  rmSync(outbox, { recursive: true, force: true });
});

/** An approved report of a client who reads Spanish, and a link to it. */
async function aLink(): Promise<{ place: string; id: string; clientId: string; propertyId: string }> {
  const columns = { organization_id: day.organizationId, name: `Familia ${Math.random()}`, language: 'es' };
  const client = await insertRow(product.database, 'client', columns);
  const { id: propertyId } = await anAccountedProperty(
    product.database,
    day.organizationId,
    { client_id: client.id },
    { months: 14, seed: 5 },
  );
  const made = await day.office.send(
    'mutation($input: WaterReportInput!) { createWaterReport(input: $input) { ... on WaterReport { id version } } }',
    { input: { clientId: client.id, fromOn: '2026-06-01', untilOn: '2026-06-30' } },
  );
  const { id, version } = made.data.createWaterReport;
  await day.office.send('mutation($id: ID!, $version: Int!) { approveReport(id: $id, version: $version) { __typename } }', { id, version });
  const link = await day.office.send('mutation($id: ID!) { shareReport(reportId: $id) { path } }', { id });
  return { place: `${product.url}${link.data.shareReport.path}`, id, clientId: client.id, propertyId };
}

const mails = async () => {
  const folder = path.join(outbox, 'rillbook-outbox', day.organizationId);
  return Promise.all(readdirSync(folder).map((name) => simpleParser(readFileSync(path.join(folder, name)))));
};
const QUESTIONS = '{ clientQuestions { id question answer email mailState dismissedAt } }';
const ANSWER = 'mutation($id: ID!, $answer: String!) { answerQuestion(id: $id, answer: $answer) { mailState } }';

it('an answer goes by mail to the address that was left, in its language, once, and stands on the link where it was asked', async () => {
  const { place } = await aLink();
  const other = await aLink();
  const ask = (fields: Record<string, string>) => fetch(`${place}/question`, { method: 'POST', body: new URLSearchParams(fields) });
  expect((await ask({ question: '¿Cuándo?', email: 'no address' })).status).toBe(400);
  expect((await ask({ question: '¿Cuándo vienen? <Ana>', email: ' ana@casa.example.test ' })).status).toBe(200);
  const page = async (at: string) => (await fetch(at)).text();
  expect(await page(place)).toContain('¿Cuándo vienen? &lt;Ana&gt;');
  expect(await page(place)).toContain('Todavía sin respuesta.');
  expect(await page(other.place)).not.toContain('¿Cuándo vienen?');
  const [asked] = (await day.office.send(QUESTIONS)).data.clientQuestions;
  expect(asked).toMatchObject({ email: 'ana@casa.example.test', mailState: null });
  const given = { id: asked.id, answer: 'El viernes.' };
  expect((await day.office.send(ANSWER, given)).data.answerQuestion).toEqual({ mailState: 'queued' });
  await day.office.send(ANSWER, given);
  await product.drain();
  const sent = await mails();
  expect(sent).toHaveLength(1);
  expect((sent[0]!.to as { text: string }).text).toBe('ana@casa.example.test');
  expect(sent[0]!.subject).toMatch(/^Su pregunta a /);
  expect(sent[0]!.text).toMatch(/Usted preguntó:\s+¿Cuándo vienen\? <Ana>\s+Nuestra respuesta:\s+El viernes\./);
  expect(sent[0]!.html).toContain('&lt;Ana&gt;');
  expect((await day.office.send(QUESTIONS)).data.clientQuestions[0]).toMatchObject({ answer: 'El viernes.', mailState: 'written' });
  expect(await page(place)).toContain('El viernes.');
});

it('a member of the client is answered at their own address', async () => {
  const { clientId } = await aLink();
  const client = await product.somebody(day.organizationId, 'client', clientId);
  const { data } = await client.send('mutation { askOffice(question: "Why so much?") { id } }');
  await day.office.send(ANSWER, { id: data.askOffice.id, answer: 'A valve stuck.' });
  await product.drain();
  expect((await mails()).map((mail) => (mail.to as { text: string }).text)).toContain(client.email);
});

it('a question that is sent again after a lost answer, or by sixteen presses at once, is one until it is answered', async () => {
  const { clientId, place } = await aLink();
  const client = await product.somebody(day.organizationId, 'client', clientId);
  const ask = (question: string) => client.send('mutation($question: String!) { askOffice(question: $question) { id } }', { question });
  const asked = await Promise.all(Array.from({ length: 16 }, () => ask('Is the new clock set?')));
  const [id, ...others] = new Set(asked.map(({ data }) => data.askOffice.id));
  expect(others).toEqual([]);
  // In other words, of somebody else, or once it is answered, it is another.
  expect((await ask('Is the new clock set now?')).data.askOffice.id).not.toBe(id);
  const neighbour = await product.somebody(day.organizationId, 'client', clientId);
  const theirs = await neighbour.send('mutation { askOffice(question: "Is the new clock set?") { id } }');
  expect(theirs.data.askOffice.id).not.toBe(id);
  await day.office.send(ANSWER, { id, answer: 'Since Monday.' });
  expect((await ask('Is the new clock set?')).data.askOffice.id).not.toBe(id);
  const byLink = (email: string) =>
    fetch(`${place}/question`, { method: 'POST', body: new URLSearchParams({ question: 'And the pump?', email }) });
  for (const email of ['', '', 'ana@place.example']) await byLink(email);
  const { data } = await day.office.send(QUESTIONS);
  expect(data.clientQuestions.filter(({ question }: { question: string }) => question === 'And the pump?')).toHaveLength(2);
});

it('a question that needs no answer is put away, is not on its link any more, and comes back when it is taken back', async () => {
  const { place } = await aLink();
  await fetch(`${place}/question`, { method: 'POST', body: new URLSearchParams({ question: 'Buy my pumps!' }) });
  const find = async () =>
    (await day.office.send(QUESTIONS)).data.clientQuestions.find(({ question }: { question: string }) => question === 'Buy my pumps!');
  const { id } = await find();
  const DISMISS = 'mutation($id: ID!, $dismissed: Boolean!) { dismissQuestion(id: $id, dismissed: $dismissed) { dismissedAt answer } }';
  expect((await day.office.send(DISMISS, { id, dismissed: true })).data.dismissQuestion).toEqual({
    dismissedAt: expect.any(String),
    answer: null,
  });
  expect(await (await fetch(place)).text()).not.toContain('Buy my pumps!');
  expect(
    codeOf(await (await product.somebody(day.organizationId, 'client', (await aLink()).clientId)).send(DISMISS, { id, dismissed: false })),
  ).toBe('NOT_ALLOWED');
  await day.office.send(DISMISS, { id, dismissed: false });
  expect(await find()).toMatchObject({ dismissedAt: null });
  expect(await (await fetch(place)).text()).toContain('Buy my pumps!');
});

it('an order that a client’s yes made speaks the office’s language, and stays the product’s words until the office writes others', async () => {
  await product.database.admin(`update organization set language = 'es' where id = $1`, [day.organizationId]);
  const { clientId, propertyId } = await aLink();
  const client = await product.somebody(day.organizationId, 'client', clientId);
  const plants = await day.finding(propertyId, { kind: 'mixed water needs', says: { code: 'mixed water needs', details: {} } });
  await client.send('mutation($id: ID!) { approveRecommended(id: $id) { id } }', { id: plants.id });
  await product.database.admin(`update organization set language = 'en' where id = $1`, [day.organizationId]);
  const order = async () =>
    (await product.database.admin(`select id, version, what, words_of from work_order where finding_id = $1`, [plants.id]))[0]!;
  const made = await order();
  expect(made).toMatchObject({ what: 'Líneas separadas para plantas con necesidades distintas.', words_of: 'finding' });
  const CHANGE = `mutation($id: ID!, $version: Int!, $input: WorkOrderInput!) { changeWorkOrder(id: $id, version: $version, input: $input) { __typename } }`;
  const change = async (what: string) =>
    day.office.send(CHANGE, {
      id: made.id,
      version: (await order()).version,
      input: { propertyId, kind: 'upgrade', what, labourHours: 2, labourRate: 80 },
    });
  await change(String(made.what));
  expect(await order()).toMatchObject({ words_of: 'finding' });
  await change('Two lines for the beds');
  expect(await order()).toMatchObject({ what: 'Two lines for the beds', words_of: null });
});

it('many approvals at once say with which data each was made; what fails is named by its client and stays a draft', async () => {
  const made = [];
  for (const seed of [1, 2]) {
    const client = await insertRow(product.database, 'client', { organization_id: day.organizationId, name: `Client ${seed} of many` });
    if (seed === 1) await anAccountedProperty(product.database, day.organizationId, { client_id: client.id }, { months: 3, seed });
    const report = { organization_id: day.organizationId, client_id: client.id, from_on: '2026-06-01', until_on: '2026-06-30' };
    made.push((await insertRow(product.database, 'water_report', report)).id);
  }
  const { data } = await day.office.send('mutation($ids: [ID!]!) { approveReports(ids: $ids) { id } }', { ids: made });
  await product.drain();
  const { waterReports } = (await day.office.send('{ waterReports { id state approvedVersion } }')).data;
  const of = (id: string) => waterReports.find((report: { id: string }) => report.id === id);
  expect(of(made[0]!)).toMatchObject({ state: 'approved', approvedVersion: expect.stringMatching(/^[0-9a-f]{12}$/) });
  expect(of(made[1]!)).toMatchObject({ state: 'draft', approvedVersion: null });
  const job = (await day.office.send('{ jobs { id says outcome { code details } } }')).data.jobs.find(
    ({ id }: { id: string }) => id === data.approveReports.id,
  );
  expect(job.says).toContain(`1 of 2 approved, of data versions ${of(made[0]!).approvedVersion}; not approved: Client 2 of many; `);
  // The same as a code with its details: the page says it in the person's language.
  const refused = [{ client: 'Client 2 of many', code: 'REPORT_WITHOUT_PROPERTY' }];
  expect(job.outcome).toEqual({ code: 'approved', details: { approved: 1, total: 2, skipped: 0, refused } });
});

it('many approvals at once keep to the figures that were looked at', async () => {
  const looked = [];
  for (const seed of [4, 5]) {
    const client = await insertRow(product.database, 'client', { organization_id: day.organizationId, name: `Client ${seed} looked at` });
    await anAccountedProperty(product.database, day.organizationId, { client_id: client.id }, { months: 3, seed });
    const report = { organization_id: day.organizationId, client_id: client.id, from_on: '2024-01-01', until_on: '2024-03-31' };
    looked.push((await insertRow(product.database, 'water_report', report)).id);
  }
  const NOW = 'query($ids: [ID!]!) { waterReports(ids: $ids) { id state content { dataVersion } } }';
  const shown = (await day.office.send(NOW, { ids: looked })).data.waterReports;
  expect(shown).toHaveLength(2);
  const ids = shown.map(({ id }: { id: string }) => id);
  const dataVersions = shown.map(({ content }: { content: { dataVersion: string } }) => content.dataVersion);
  const APPROVE = 'mutation($ids: [ID!]!, $seen: [String!]) { approveReports(ids: $ids, dataVersions: $seen) { id } }';
  expect(codeOf(await day.office.send(APPROVE, { ids, seen: dataVersions.slice(1) }))).toBe('VALUE_REFUSED');
  // Between the look and the approval somebody writes a note into the second.
  await product.database.admin(`update water_report set note = 'Thank you.' where id = $1`, [ids[1]]);
  const { data } = await day.office.send(APPROVE, { ids, seen: dataVersions });
  await product.drain();
  const { job } = (await day.office.send('query($id: ID!) { job(id: $id) { outcome { code details } } }', { id: data.approveReports.id }))
    .data;
  expect(job.outcome.details).toMatchObject({ approved: 1, total: 2, refused: [{ code: 'REPORT_FIGURES_CHANGED' }] });
  const after = (await day.office.send(NOW, { ids })).data.waterReports;
  const stateOf = (id: string) => after.find((report: { id: string }) => report.id === id).state;
  expect(ids.map(stateOf)).toEqual(['approved', 'draft']);
});

it('says at start and on the page that mails carry no links where the server does not know its address', async () => {
  const server = { SMTP_URL: 'smtp://mail.example.test' };
  expect(mailWarnings(server)[0]).toMatch(/^Mail leaves by SMTP_URL, but PUBLIC_URL is not set: .* Set PUBLIC_URL/);
  expect(mailWarnings({ ...server, PUBLIC_URL: 'water.example.test' })[0]).toContain(
    'PUBLIC_URL is "water.example.test", which is no address',
  );
  expect(mailSettings({ ...server, PUBLIC_URL: 'javascript:alert(1)' }).publicUrl).toBeNull();
  expect(mailWarnings({ ...server, PUBLIC_URL: 'https://water.example.test/' })).toEqual([]);
  expect(mailWarnings({})).toEqual([]);
  expect((await day.office.send('{ reportMailing { hasServer hasLinks } }')).data.reportMailing).toEqual({
    hasServer: false,
    hasLinks: false,
  });
});
