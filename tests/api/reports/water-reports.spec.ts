import { randomUUID } from 'node:crypto';
import { gunzipSync } from 'node:zlib';
import { restoreReport } from '@rillbook/showing/report/restore-report.js';
import { writeReport } from '@rillbook/showing/report/write-report.js';
import { strFromU8, unzipSync } from 'fflate';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type TestApp, startApp } from '../../support/test-app.js';
import { aController, aProperty, aZone, insertRow } from '../../support/builders.js';
import { PrintReport } from '../../../apps/api/src/features/reports/printing/print-report.service.js';
import { reportCsv } from '../../../apps/api/src/features/reports/printing/report-csv.js';
import { reportHtml } from '../../../apps/api/src/features/reports/printing/report-html.js';
import { reportXlsx } from '../../../apps/api/src/features/reports/printing/report-xlsx.js';
import { inventedReport } from '../../support/invented-report.mjs';
import { pdfText } from '../../support/pdf-text.mjs';
import { apart, figuresOfCsv, figuresOfXlsx, missingInPdf } from '../../support/report-figures.mjs';
import { anAccount, anAccountedProperty } from './accounted-property.js';
import { type FieldDay, codeOf, fieldDay } from '../fieldwork/field-day.js';

let product: TestApp;
let day: FieldDay;

beforeAll(async () => {
  product = await startApp();
  day = await fieldDay(product, null);
});
afterAll(() => product.close());

const REPORT =
  '__typename ... on WaterReport { id version clientId fromOn untilOn state note sentAt } ... on NameTaken { name } ... on ChangedMeanwhile { version }';
const create = (input: Record<string, unknown>) =>
  day.office.send(`mutation($input: WaterReportInput!) { createWaterReport(input: $input) { ${REPORT} } }`, {
    input: { clientId: day.clientId, ...input },
  });
const list = async (who: FieldDay['office']) => (await who.send('{ waterReports { id state } }')).data.waterReports;

it('keeps a draft for a client and period, once', async () => {
  const july = { fromOn: '2026-07-01', untilOn: '2026-07-31' };
  const made = (await create({ ...july, note: ' Dry month ' })).data.createWaterReport;
  expect(made).toMatchObject({
    __typename: 'WaterReport',
    version: 1,
    clientId: day.clientId,
    ...july,
    state: 'draft',
    note: 'Dry month',
    sentAt: null,
  });
  expect((await create(july)).data.createWaterReport).toEqual({ __typename: 'NameTaken', name: '2026-07-01 to 2026-07-31' });
  const change = (version: number, note: string) =>
    day.office.send(
      `mutation($id: ID!, $version: Int!, $input: WaterReportInput!) { changeWaterReport(id: $id, version: $version, input: $input) { ${REPORT} } }`,
      { id: made.id, version, input: { clientId: day.clientId, ...july, note } },
    );
  expect((await change(1, 'A dry month')).data.changeWaterReport).toMatchObject({ version: 2, note: 'A dry month' });
  expect((await change(1, 'Wet')).data.changeWaterReport).toEqual({ __typename: 'ChangedMeanwhile', version: 2 });
  await day.office.send('mutation($id: ID!) { retireWaterReport(id: $id, version: 2) { __typename } }', { id: made.id });
  expect(await list(day.office)).toEqual([]);
  // What was taken away does not stand in the way of a new one.
  const again = (await create(july)).data.createWaterReport;
  expect(again).toMatchObject({ __typename: 'WaterReport', state: 'draft', note: null });
  await day.office.send('mutation($id: ID!) { retireWaterReport(id: $id, version: 1) { __typename } }', { id: again.id });
});

it('refuses a period that ends before it begins, and a client that is not there', async () => {
  expect((await create({ fromOn: '2026-07-01', untilOn: '2026-06-30' })).errors[0]!.extensions).toMatchObject({
    code: 'VALUE_REFUSED',
    details: { field: 'untilOn' },
  });
  expect((await create({ clientId: day.crewId, fromOn: '2026-07-01', untilOn: '2026-07-31' })).errors[0]!.extensions).toEqual({
    code: 'NOT_FOUND',
    details: { thing: 'client', id: day.crewId },
  });
});

it('shows a client what was sent to them, and nothing else', async () => {
  const draft = (await create({ fromOn: '2026-05-01', untilOn: '2026-05-31' })).data.createWaterReport;
  const sent = (await create({ fromOn: '2026-06-01', untilOn: '2026-06-30' })).data.createWaterReport;
  await product.database.admin(`update water_report set state = 'sent', sent_at = now() where id = $1`, [sent.id]);
  const client = await product.somebody(day.organizationId, 'client', day.clientId);
  expect(await list(client)).toEqual([{ id: sent.id, state: 'sent' }]);
  expect((await list(day.owner)).map(({ id }: { id: string }) => id)).toEqual([sent.id, draft.id]);
  expect(codeOf(await day.lead.send('{ waterReports { id } }'))).toBe('NOT_ALLOWED');
  expect(
    codeOf(
      await client.send(
        'mutation($client: ID!) { createWaterReport(input: { clientId: $client, fromOn: "2026-01-01", untilOn: "2026-01-31" }) { __typename } }',
        { client: day.clientId },
      ),
    ),
  ).toBe('NOT_ALLOWED');
});

it('is of whole months, and of a property of its client', async () => {
  const field = async (input: Record<string, unknown>) => (await create(input)).errors[0]!.extensions.details;
  expect(await field({ fromOn: '2026-03-02', untilOn: '2026-03-31' })).toMatchObject({ field: 'fromOn' });
  expect(await field({ fromOn: '2026-03-01', untilOn: '2026-03-30' })).toMatchObject({ field: 'untilOn' });
  const stranger = await aProperty(product.database, day.organizationId);
  expect(await field({ fromOn: '2026-03-01', untilOn: '2026-03-31', propertyId: stranger.id })).toMatchObject({
    thing: 'property of this client',
  });
});

it('answers a dead link with a page in two languages, and tells nothing else', async () => {
  for (const path of ['/api/shared/gone', '/api/shared/gone/report.pdf', `/api/stop-reports/${day.clientId}`]) {
    const answer = await fetch(`${product.url}${path}`);
    expect([answer.status, answer.headers.get('content-type')]).toEqual([404, 'text/html; charset=utf-8']);
    const page = await answer.text();
    expect(page).toContain('This link does not work any more.');
    expect(page).toContain('<p lang="es">Este enlace ya no sirve.');
    expect(page).not.toMatch(/SHARE_LINK|"code"/);
  }
});

it('keeps the lines of the office’s address apart at the head of the page of a link', () => {
  const model = writeReport(inventedReport(1));
  const contact = 'office@meadow.example.test\n1 <Long> Street';
  const page = reportHtml({ ...model, brand: { ...model.brand, contact } }, { style: 's', files: [], ask: 'a', asked: [] });
  expect(page).toContain('office@meadow.example.test<br>1 &lt;Long&gt; Street');
});

it('heads the files of a Spanish report in Spanish', () => {
  const model = writeReport(inventedReport(1));
  expect(reportCsv(model).split('\r\n')[0]).toBe('\ufeffpropiedad,sección,id,cifra,valor,unidad,como se muestra,motivo');
  expect(strFromU8(unzipSync(new Uint8Array(reportXlsx(model)))['xl/worksheets/sheet1.xml']!)).toContain('>como se muestra<');
  // A sheet's name has room for 31 letters: a year in Spanish words is cut in none.
  const year = writeReport({ ...inventedReport(1), language: 'es', period: { from: '2025-09', until: '2026-06' } });
  expect(strFromU8(unzipSync(new Uint8Array(reportXlsx(year)))['xl/workbook.xml']!)).toContain('<sheet name="2025-09 – 2026-06"');
});

it('keeps a logo that can be printed, and refuses what would stop every report', async () => {
  const give = (logo: string) =>
    day.office.send('mutation($logo: String) { changeReportBrand(input: { logo: $logo }) { logo } }', { logo });
  const png = async (width: number, height: number) =>
    (
      await sharp({ create: { width, height, channels: 3, background: '#2f5d3a' } })
        .png()
        .toBuffer()
    ).toString('base64');
  const expected = async (base64: string) => (await give(`data:image/png;base64,${base64}`)).errors[0]!.extensions.details.expected;
  const broken = Buffer.concat([Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]), Buffer.from('no picture')]);
  expect(await expected(broken.toString('base64'))).toBe('a PNG or JPEG that is whole: this one cannot be read to its end');
  expect(await expected(await png(4100, 4000))).toBe('a picture of at most 16 million points');
  const { logo } = (await give(`data:image/png;base64,${await png(4000, 40)}`)).data.changeReportBrand;
  const { width, height } = await sharp(Buffer.from(logo.split(',')[1], 'base64')).metadata();
  expect([width, height]).toEqual([960, 10]);
  await day.office.send('mutation { changeReportBrand(input: { logo: null }) { logo } }');
});

describe('what a report says', () => {
  const CONTENT = 'content { title verdict dataVersion figures { id propertyId label value unit shown reason } }';
  let propertyId: string;
  let reportId: string;
  const content = async () =>
    (await day.office.send(`query($id: ID!) { waterReport(id: $id) { ${CONTENT} } }`, { id: reportId })).data.waterReport.content;
  const figure = async (id: string) => (await content()).figures.find((each: { id: string }) => each.id === id);

  beforeAll(async () => {
    const { database } = product;
    const property = await anAccountedProperty(
      database,
      day.organizationId,
      { client_id: day.clientId, name: 'Quail Green', allowance_from: 'ordinance' },
      { months: 30, seed: 4 },
    );
    propertyId = property.id;
    const work = { organization_id: day.organizationId, property_id: propertyId, state: 'done', what: 'Valve replaced' };
    await insertRow(database, 'work_order', { ...work, kind: 'repair', done_at: '2025-06-10T18:00:00Z' });
    await insertRow(database, 'work_order', { ...work, kind: 'inspect', done_at: '2026-06-12T18:00:00Z', what: 'Walked the zones' });
    reportId = (await create({ fromOn: '2026-06-01', untilOn: '2026-06-30', propertyId })).data.createWaterReport.id;
  });

  it('is one sentence, and every number once with its unit', async () => {
    const { title, verdict, dataVersion } = await content();
    expect(title).toBe('Water report, June 2026');
    expect(verdict).toMatch(/^In June 2026, Quail Green took [\d,]+ gal: [\d,]+ gal \(\d+%\) more than its plants needed/);
    expect(dataVersion).toMatch(/^[0-9a-f]{12}$/);
    const [metered, needed, above] = [await figure('metered'), await figure('needed'), await figure('aboveNeed')];
    expect(metered).toMatchObject({ propertyId, unit: 'gal', reason: null });
    expect(above.value).toBe(metered.value - needed.value);
    expect(verdict).toContain(`${metered.shown} gal`);
    expect((await figure('saved')).value).not.toBeNull();
  });

  it('changes its fingerprint with what it was made from, and not otherwise', async () => {
    const before = (await content()).dataVersion;
    expect((await content()).dataVersion).toBe(before);
    await product.database.admin(`update month_account set inputs_version = 'newer' where property_id = $1 and month = '2026-06-01'`, [
      propertyId,
    ]);
    expect((await content()).dataVersion).not.toBe(before);
  });

  it('names which of several controllers a finding is of', async () => {
    const place = await anAccountedProperty(product.database, day.organizationId, { client_id: day.clientId }, { months: 30, seed: 9 });
    const north = await aController(product.database, place, { name: 'North' });
    await aController(product.database, place, { name: 'South' });
    const says = { code: 'over-programmed', details: { controllerId: north.id } };
    await day.finding(place.id, { kind: 'over-programmed', from_on: '2026-06-01', until_on: '2026-06-20', says });
    const made = (await create({ fromOn: '2026-06-01', untilOn: '2026-06-30', propertyId: place.id })).data.createWaterReport;
    const pdf = await fetch(`${product.url}/api/reports/${made.id}/report.pdf`, { headers: { cookie: day.office.cookie } });
    expect(await pdfText(Buffer.from(await pdf.arrayBuffer()))).toContain('(controllerNorth)');
  });

  it('names both zones of a finding that is one of them', async () => {
    const place = await anAccountedProperty(product.database, day.organizationId, { client_id: day.clientId }, { months: 30, seed: 11 });
    const [lawn, beds] = [await aZone(product.database, place, { name: 'Lawn' }), await aZone(product.database, place, { name: 'Beds' })];
    const seen = { from_on: '2026-06-01', until_on: '2026-06-20' };
    const oneOf = { zoneId: null, zoneIds: [beds.id, lawn.id], change: -1 };
    await day.finding(place.id, { ...seen, kind: 'not delivering', says: { code: 'not delivering zone', details: oneOf } });
    // What is of all its zones, not of one, is told of its controller.
    const ofAll = { zoneIds: [lawn.id, beds.id] };
    await day.finding(place.id, { ...seen, kind: 'over-programmed', says: { code: 'over-programmed', details: ofAll } });
    const made = (await create({ fromOn: '2026-06-01', untilOn: '2026-06-30', propertyId: place.id })).data.createWaterReport;
    const pdf = await fetch(`${product.url}/api/reports/${made.id}/report.pdf`, { headers: { cookie: day.office.cookie } });
    const text = await pdfText(Buffer.from(await pdf.arrayBuffer()));
    expect(text).toContain('Lesswatercamethanwasprogrammed:BedsorLawn.');
    expect(text).not.toContain('plantsneeded:');
  });

  it('tells a browser in words, first in the person’s language and a stranger in the browser’s, why a file cannot be given, and a program by a code', async () => {
    const open = async (id: string, cookie: string, headers: Record<string, string>) => {
      const answer = await fetch(`${product.url}/api/reports/${id}/report.pdf`, { headers: { cookie, ...headers } });
      return { status: answer.status, type: answer.headers.get('content-type'), said: await answer.text() };
    };
    const tab = { accept: 'text/html,application/xhtml+xml,*/*;q=0.8', 'accept-language': 'es-US,es;q=0.9,en;q=0.5' };
    await day.office.send('mutation { chooseLanguage(language: es) { person { language } } }');
    const gone = await open(randomUUID(), day.office.cookie, { ...tab, 'accept-language': 'en-US' });
    await day.office.send('mutation { chooseLanguage(language: en) { person { language } } }');
    expect([gone.status, gone.type]).toEqual([404, 'text/html; charset=utf-8']);
    expect(gone.said).toMatch(/<html lang="es">.*<h1>Este informe o archivo no está.*<p lang="en">This report or file is not there/);
    expect((await open(reportId, '', tab)).said).toMatch(/<html lang="es">.*<h1>No ha iniciado sesión/);
    expect(JSON.parse((await open(randomUUID(), day.office.cookie, {})).said)).toMatchObject({ code: 'NOT_FOUND' });
  });

  it('is printed as a tagged PDF, for who may read it', async () => {
    const pdf = await fetch(`${product.url}/api/reports/${reportId}/report.pdf`, { headers: { cookie: day.office.cookie } });
    expect([pdf.status, pdf.headers.get('content-type')]).toEqual([200, 'application/pdf']);
    const bytes = Buffer.from(await pdf.arrayBuffer()).toString('latin1');
    expect(bytes.startsWith('%PDF-')).toBe(true);
    expect(bytes).toContain('/StructTreeRoot');
    expect(bytes).toContain('/Marked true');
    expect(bytes).toMatch(/pdfuaid:part/);
    // Each cell of a table points at the head of its row first, which the tree of names knows.
    const count = (what: RegExp): number => bytes.match(what)?.length ?? 0;
    expect(count(/\/Scope \/Row\n/g)).toBeGreaterThan(20);
    expect(count(/\/Headers \[\(V/g)).toBe(count(/\/S \/TD\n/g));
    const names = /\/IDTree <<\s*\/Names \[([^\]]*)\]/.exec(bytes)?.[1] ?? '';
    const named = [...names.matchAll(/\(([UV][^)]*)\) (\d+) 0 R/g)];
    expect(named.map(([, name]) => name)).toEqual(named.map(([, name]) => name).sort());
    for (const [, name, object] of named)
      expect(bytes.slice(bytes.indexOf(`\n${object} 0 obj\n`)).split('endobj')[0]).toMatch(
        new RegExp(`/S /TH\\s[\\s\\S]*/ID \\(${name}\\)|/ID \\(${name}\\)[\\s\\S]*/S /TH\\s`),
      );
    for (const [, pointed] of bytes.matchAll(/\/Headers \[\((V\d+)\)/g)) expect(names).toContain(`(${pointed}) `);
    // A draft is the office's alone.
    const client = await product.somebody(day.organizationId, 'client', day.clientId);
    expect((await fetch(`${product.url}/api/reports/${reportId}/report.pdf`, { headers: { cookie: client.cookie } })).status).toBe(404);
  });

  it('says at the foot where a letter could not be printed, and where all could be it says nothing', async () => {
    const printer = product.app.get(PrintReport);
    const model = writeReport({ ...inventedReport(1), language: 'en', client: 'Green \u0e01\u0e02 Owners' });
    const said = 'report’slettershavenosignforwhatwaswritten';
    expect(await printer.unprinted(model)).toBe('\u0e01\u0e02');
    // What another letter of the typesetter's has is printed, and is not warned of.
    const elsewhere = 'Ελληνικά Привет Nguyễn';
    expect(await printer.unprinted(writeReport({ ...inventedReport(1), client: elsewhere }))).toBe('');
    expect(await printer.unprinted(writeReport({ ...inventedReport(1), client: 'Owners' }))).toBe('');
    const text = async (report: typeof model): Promise<string> => (await pdfText(await printer.run(report))).replace(/\s+/g, '');
    expect(await text(model)).toContain(said);
    expect(await text(writeReport({ ...inventedReport(1), language: 'en', client: 'Green Owners' }))).not.toContain(said);
  });

  it('prints names and notes in Chinese, Japanese and Korean, in embedded letters', async () => {
    const printer = product.app.get(PrintReport);
    const written = { client: '王小明 さくら カタカナ 김철수', note: '请修好阀门 漢字 밸브' };
    const model = writeReport({ ...inventedReport(1), language: 'en', ...written });
    expect(await printer.unprinted(model)).toBe('');
    const text = (await pdfText(await printer.run(model))).replace(/\s+/g, '');
    for (const words of Object.values(written)) expect(text).toContain(words.replace(/\s+/g, ''));
  });

  it('has every figure the same in GraphQL, CSV, workbook and PDF', async () => {
    const made = (await create({ fromOn: '2026-04-01', untilOn: '2026-06-30', propertyId })).data.createWaterReport;
    await day.office.send('mutation($id: ID!) { approveReport(id: $id, version: 1) { __typename } }', { id: made.id });
    const asked = 'content { figures { id section label value unit shown reason } }';
    const { figures } = (await day.office.send(`query($id: ID!) { waterReport(id: $id) { ${asked} } }`, { id: made.id })).data.waterReport
      .content;
    const wanted = figures.map((figure: object) => ({ property: 'Quail Green', ...figure }));
    expect(wanted.length).toBeGreaterThan(90);
    const file = async (kind: string) => {
      const answer = await fetch(`${product.url}/api/reports/${made.id}/report.${kind}`, { headers: { cookie: day.office.cookie } });
      return Buffer.from(await answer.arrayBuffer());
    };
    expect(apart('CSV', figuresOfCsv((await file('csv')).toString()), wanted)).toEqual([]);
    expect(apart('workbook', figuresOfXlsx(await file('xlsx')), wanted)).toEqual([]);
    const [kept] = await product.database.admin('select model from report_edition where report_id = $1', [made.id]);
    const model = restoreReport(gunzipSync(kept!['model'] as Buffer).toString());
    expect(missingInPdf(model, await pdfText(await file('pdf')))).toEqual([]);
  });
});

describe('the company’s month', () => {
  let own: FieldDay;
  const told = async (month: string) =>
    (
      await own.office.send(
        'query($month: Month!) { ownersMonth(month: $month) { savedLitres savedMoney toldOf ordersDone findings { kind opened resolved open litres lackingLitres money } sitesToUpgrade { propertyId litres money } } }',
        { month },
      )
    ).data.ownersMonth;
  beforeAll(async () => {
    own = await fieldDay(product, null);
  });

  it('counts a kind that only ended in the month, and leaves a sum unknown of which a part is', async () => {
    const { id } = await aProperty(product.database, own.organizationId);
    const before = { opened_at: '2025-01-05T12:00:00Z' };
    await own.finding(id, { ...before, kind: 'steady flow', state: 'resolved', decided_at: '2025-03-10T12:00:00Z', litres: 70, money: 3 });
    await own.finding(id, { ...before, kind: 'unexplained use', litres: 900, money: 4 });
    await own.finding(id, { ...before, kind: 'unexplained use', litres: 100, money: null });
    expect((await told('2025-03')).findings).toEqual([
      { kind: 'steady flow', opened: 0, resolved: 1, open: 0, litres: 0, lackingLitres: 0, money: 0 },
      { kind: 'unexplained use', opened: 0, resolved: 0, open: 2, litres: 1000, lackingLitres: 0, money: null },
    ]);
  });

  it('tells water that lacks apart from water that is lost, and takes no amount from what has none', async () => {
    const { id } = await aProperty(product.database, own.organizationId);
    const since = { opened_at: '2025-05-05T12:00:00Z' };
    const flow = (change: number) => ({ ...since, kind: 'zone flow changed', says: { code: 'zone flow changed', details: { change } } });
    await own.finding(id, { ...since, kind: 'under-programmed', litres: 300, money: null });
    await own.finding(id, { ...flow(0.2), litres: 50, money: 2 });
    await own.finding(id, { ...flow(-0.2), litres: 80, money: null });
    await own.finding(id, { ...since, kind: 'flow to be tested', litres: 5000, money: null });
    await own.finding(id, { ...since, kind: 'breaks a rule', litres: null, money: null });
    const { findings } = await told('2025-05');
    const amounts = Object.fromEntries(
      findings.map((each: Record<string, unknown>) => [each['kind'], [each['litres'], each['lackingLitres'], each['money']]]),
    );
    expect(amounts).toMatchObject({
      'under-programmed': [0, 300, 0],
      'zone flow changed': [50, 80, 2],
      'flow to be tested': [0, 0, 0],
      'breaks a rule': [0, 0, 0],
    });
  });

  it('counts the orders that were done in the month, also off a route', async () => {
    const { id } = await aProperty(product.database, own.organizationId);
    const order = { organization_id: own.organizationId, property_id: id, kind: 'adjust', state: 'done', what: 'Minutes' };
    await insertRow(product.database, 'work_order', { ...order, done_at: '2025-05-20T12:00:00Z' });
    await insertRow(product.database, 'work_order', { ...order, done_at: '2025-06-20T12:00:00Z' });
    expect((await told('2025-05')).ordersDone).toBe(1);
  });

  it('names a site for an upgrade where its gap is as sure as the organization asks', async () => {
    const december = 2024 * 12 - 1;
    const needing = async (allowed: number, pricePerLitre: number | null) => {
      const property = await aProperty(product.database, own.organizationId);
      await anAccount(product.database, property, december, { allowed, needed: 1000, programmed: 1000, metered: 1000 }, pricePerLitre);
      return property.id;
    };
    // The uncertainty is 50: a gap of 50 is no more than five in six sure.
    await needing(950, 0.002);
    const [priced, unpriced] = [await needing(800, 0.002), await needing(700, null)];
    const { sitesToUpgrade } = await told('2023-12');
    expect(sitesToUpgrade).toEqual([
      { propertyId: unpriced, litres: 300, money: null },
      { propertyId: priced, litres: 200, money: 0.4 },
    ]);
  });

  it('has no money of a saving where the price of water is not known of one of its properties', async () => {
    const worked = async (seed: number, pricePerLitre: number | null) => {
      const property = await anAccountedProperty(product.database, own.organizationId, {}, { months: 30, seed, pricePerLitre });
      await insertRow(product.database, 'work_order', {
        organization_id: own.organizationId,
        property_id: property.id,
        kind: 'repair',
        state: 'done',
        done_at: '2025-07-15T12:00:00Z',
      });
    };
    await worked(3, 0.0015);
    const one = await told('2026-05');
    expect(one.toldOf).toBe(1);
    expect(one.savedMoney).toBeCloseTo(one.savedLitres * 0.0015, 6);
    await worked(4, null);
    expect(await told('2026-05')).toMatchObject({ toldOf: 2, savedMoney: null });
  });
});
