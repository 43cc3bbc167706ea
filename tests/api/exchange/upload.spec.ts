import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { afterAll, beforeAll, beforeEach, expect, it } from 'vitest';
import { type Somebody, startApp, type TestApp } from '../../support/test-app.js';
import { everyColumn } from './every-column.js';
import { exportOf, type Files } from './exchange-kit.js';

let product: TestApp;
let organization: string;
let office: Somebody;
const data = mkdtempSync(path.join(tmpdir(), 'rillbook-upload-test-'));

beforeAll(async () => {
  process.env['DATA_DIR'] = data;
  product = await startApp();
});
afterAll(async () => {
  delete process.env['DATA_DIR'];
  rmSync(data, { recursive: true, force: true });
  await product.close();
});
beforeEach(async () => {
  organization = await product.organization();
  office = await product.somebody(organization, 'office');
});

const OURS = { 'x-rillbook-request': '1' };

function ask(who: Somebody | null, where: string, init: RequestInit = {}): Promise<Response> {
  return fetch(`${product.url}${where}`, { ...init, headers: { ...(who && { cookie: who.cookie }), ...OURS, ...init.headers } });
}

function upload(who: Somebody | null, files: Readonly<Record<string, string | Uint8Array>>): Promise<Response> {
  const form = new FormData();
  for (const [name, content] of Object.entries(files)) form.append('files', new Blob([content as BlobPart]), name);
  return ask(who, '/api/imports', { method: 'POST', body: form });
}

const accept = (who: Somebody, id: string, rows: string): Promise<Response> =>
  ask(who, `/api/imports/${id}/accept`, {
    method: 'POST',
    body: JSON.stringify({ rows }),
    headers: { 'content-type': 'application/json' },
  });

const zipOf = (files: Files): Uint8Array =>
  zipSync(Object.fromEntries(Object.entries(files).map(([name, text]) => [`world/${name}`, strToU8(text)])));

const BAD_ZONES = `property,zone,area_sqft,method,gate
Elm Court,Lawn,"1,200",spray,left
Elm Court,Beds,300,drip,right
Nowhere,Beds,300,drip,
`;

it('checks a zip, imports it in the background, and gives it back as an archive', async () => {
  const checked = await upload(office, { 'world.zip': zipOf({ ...everyColumn, 'accounts.csv': 'property\n', 'photos.txt': 'a' }) });
  expect(checked.status).toBe(201);
  const body = await checked.json();
  expect(body).toMatchObject({ problemsTotal: 0, rows: 38 });
  expect(body.files.find((file: { file: string }) => file.file === 'zones')).toMatchObject({
    name: 'zones.csv',
    status: 'read',
    new: 2,
    changed: 0,
    same: 0,
    wrong: 0,
  });
  expect(body.ignored.map((file: { name: string }) => file.name)).toEqual(['accounts.csv', 'photos.txt']);
  expect(await product.database.admin('select from property where organization_id = $1', [organization])).toHaveLength(0);
  expect(await (await ask(office, `/api/imports/${body.id}`)).json()).toEqual(body);

  const accepted = await accept(office, body.id, 'all');
  expect(accepted.status).toBe(202);
  const { jobId } = await accepted.json();
  expect(await (await accept(office, body.id, 'all')).json()).toEqual({ jobId });
  await product.drain();
  const { data: told } = await office.send('query($id: ID!) { job(id: $id) { kind state done total says } }', { id: jobId });
  expect(told.job).toMatchObject({ kind: 'import', state: 'done', says: '38 rows new, 0 changed, 0 same, 0 refused' });
  expect(await product.database.admin('select distinct person_id, way from change where organization_id = $1', [organization])).toEqual([
    { person_id: office.personId, way: 'import' },
  ]);

  const archive = await ask(office, '/api/export');
  expect(archive.headers.get('content-type')).toBe('application/zip');
  const files = Object.fromEntries(
    Object.entries(unzipSync(new Uint8Array(await archive.arrayBuffer()))).map(([name, bytes]) => [name, strFromU8(bytes)]),
  );
  expect(files).toEqual(await exportOf(product, organization));
  expect(Object.keys(files)).toHaveLength(18);
});

it('says what is wrong in the language of the person, keeps the refused rows for mending, and imports the good ones', async () => {
  await product.database.admin(`update person set language = 'es' where id = $1`, [office.personId]);
  const body = await (
    await upload(office, {
      'clients.csv': everyColumn['clients.csv']!,
      'properties.csv': everyColumn['properties.csv']!,
      'zones.csv': BAD_ZONES,
    })
  ).json();
  expect(body.problemsTotal).toBe(2);
  const zones = body.files.find((file: { file: string }) => file.file === 'zones');
  expect(zones).toMatchObject({ new: 1, wrong: 2 });
  expect(zones.problems[0]).toMatchObject({ file: 'zones.csv', line: 2, column: 'area_sqft', code: 'THOUSANDS_SEPARATOR', found: '1,200' });
  expect(zones.problems[0].says).toContain('separador de miles');
  expect(zones.notices.map((notice: { code: string; column: string }) => `${notice.code} ${notice.column}`)).toEqual([
    'UNKNOWN_COLUMN gate',
  ]);

  const refused = await accept(office, body.id, 'all');
  expect(refused.status).toBe(409);
  expect(await refused.json()).toMatchObject({ code: 'IMPORT_ROWS_WRONG', details: { problems: 2 } });
  expect((await accept(office, body.id, 'some')).status).toBe(400);
  await accept(office, body.id, 'good');
  await product.drain();
  expect(await product.database.admin('select name from zone where organization_id = $1', [organization])).toEqual([{ name: 'Beds' }]);

  const answer = await ask(office, `/api/imports/${body.id}/rejected/zones.csv`);
  expect(answer.headers.get('content-disposition')).toBe('attachment; filename="zones.csv"');
  const rejected = await answer.text();
  expect(rejected.split('\n')[0]).toBe('property,zone,area_sqft,method,gate,problem');
  expect(rejected).toMatch(/^Elm Court,Lawn,"1,200",spray,left,"?area_sqft: /m);
  expect((await ask(office, `/api/imports/${body.id}/rejected/clients`)).status).toBe(404);

  const mended = rejected.replace('"1,200"', '1200').replace('Nowhere', 'Elm Court').replace('Beds,300,drip,,', 'More beds,300,drip,,');
  const again = await (await upload(office, { 'zones.csv': mended })).json();
  expect(again).toMatchObject({ problemsTotal: 0, rows: 2 });
  await accept(office, again.id, 'all');
  await product.drain();
  expect(await product.database.admin('select name from zone where organization_id = $1 order by name', [organization])).toEqual([
    { name: 'Beds' },
    { name: 'Lawn' },
    { name: 'More beds' },
  ]);
});

it('forgets an upload, and leaves nothing of one that broke', async () => {
  const { id } = await (await upload(office, { 'clients.csv': everyColumn['clients.csv']! })).json();
  const folder = path.join(data, 'rillbook-uploads', organization);
  expect(readdirSync(folder)).toEqual([id]);
  expect((await ask(office, `/api/imports/${id}`, { method: 'DELETE' })).status).toBe(204);
  expect((await ask(office, `/api/imports/${id}`)).status).toBe(404);
  const nothing = await upload(office, {});
  expect([nothing.status, (await nothing.json()).code]).toEqual([400, 'UPLOAD_EMPTY']);
  const text = await ask(office, '/api/imports', { method: 'POST', body: 'client\nA', headers: { 'content-type': 'text/plain' } });
  expect([text.status, (await text.json()).code]).toEqual([400, 'UPLOAD_EXPECTED']);
  const many = await upload(office, Object.fromEntries(Array.from({ length: 41 }, (_, at) => [`file-${at}.csv`, 'a'])));
  expect([many.status, (await many.json()).code]).toEqual([413, 'UPLOAD_TOO_MANY_FILES']);
  expect(readdirSync(folder)).toEqual([]);
});

it('is closed to strangers, to technicians, to other organizations, and to pages of other sites', async () => {
  const { id } = await (await upload(office, { 'clients.csv': everyColumn['clients.csv']! })).json();
  const technician = await product.somebody(organization, 'technician');
  const other = await product.somebody(await product.organization(), 'owner');
  const places: readonly (readonly [string, string])[] = [
    ['POST', '/api/imports'],
    ['GET', `/api/imports/${id}`],
    ['POST', `/api/imports/${id}/accept`],
    ['GET', `/api/imports/${id}/rejected/clients`],
    ['DELETE', `/api/imports/${id}`],
    ['GET', '/api/export'],
  ];
  for (const [method, where] of places) {
    expect((await ask(null, where, { method })).status, `${method} ${where} by nobody`).toBe(401);
    expect((await ask(technician, where, { method })).status, `${method} ${where} by a technician`).toBe(403);
  }
  for (const [method, where] of places.slice(1, 5)) {
    const body = method === 'POST' ? { body: '{"rows":"good"}', headers: { 'content-type': 'application/json' } } : {};
    expect((await ask(other, where, { method, ...body })).status, `${method} ${where} by another organization`).toBe(404);
  }
  for (const [method, where] of places.filter(([way]) => way !== 'GET')) {
    const answer = await fetch(`${product.url}${where}`, { method, headers: { cookie: office.cookie } });
    expect([answer.status, (await answer.json()).code]).toEqual([403, 'REQUEST_NOT_FROM_PAGES']);
  }
  expect((await ask(office, '/api/imports/..%2f..%2fetc')).status).toBe(404);
  const archive = unzipSync(new Uint8Array(await (await ask(other, '/api/export')).arrayBuffer()));
  expect(Object.keys(archive)).toEqual(['accounts.csv', 'findings.csv']);
});
