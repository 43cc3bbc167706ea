import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { type FileMeaning, withMeaning } from '../../../../apps/api/src/features/exchange/files/table-file.js';
import { type Somebody, startApp, type TestApp } from '../../../support/test-app.js';
import { countsOf, exportOf, type Files, importInto, inputsOf } from '../exchange-kit.js';
import { inMemory } from '../imports-in-memory.js';
import { codedHourly, CODED_DAILY, DAYMET, feed, GHCN, interval, MIDNIGHT } from './built-files.js';

let product: TestApp;
let organization: string;
let office: Somebody;
const data = mkdtempSync(path.join(tmpdir(), 'rillbook-layouts-test-'));

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

const WORLD: Files = {
  'stations.csv': 'station,latitude,longitude,elevation_ft\nDry Lake,36,-115,2300\n',
  'properties.csv': 'property,client,weather_station,time_zone\nElm,Elm HOA,Dry Lake,America/Los_Angeles\n',
  'meters.csv': 'meter,property,unit\nM1,Elm,gal\n',
};

const bring = (files: Files, meaning: FileMeaning = { station: 'Dry Lake', windHeightM: 3 }, to = organization) =>
  importInto(
    product,
    to,
    withMeaning(inMemory(files), () => meaning),
  );

/** Work of one organization waits for each other: one round may leave some of it. */
async function settled(): Promise<void> {
  for (let round = 0; round < 20; round += 1) {
    await product.drain();
    const waiting = await product.database.admin(`select 1 from background_job where state in ('queued', 'running')`);
    if (waiting.length === 0) return;
  }
  throw new Error('background work does not end');
}

const VALUES =
  'tmax_c, tmin_c, rh_max_percent, rh_min_percent, dew_point_c, wind_m_per_s, wind_height_m, solar_mj_per_m2, rain_mm, given_eto_mm';
const stored = (of = organization) =>
  product.database.admin<Record<string, number | string | null>>(
    `select day::text, ${VALUES} from weather_day where organization_id = $1 order by day`,
    [of],
  );

/** What was stored, with its numbers to nine digits: a unit that is converted there and back costs the last ones. */
const rounded = (days: Awaited<ReturnType<typeof stored>>) =>
  days.map((day) =>
    Object.fromEntries(
      Object.entries(day).map(([name, value]) => [name, typeof value === 'number' ? Number(value.toPrecision(9)) : value]),
    ),
  );

describe('a station’s file', () => {
  it('stores the same days as the same values in weather.csv', async () => {
    await bring({ ...WORLD, 'download.csv': CODED_DAILY });
    const other = await product.organization();
    // 300 ly are 12.5604 MJ/m2, 400 ly 16.7472 MJ/m2; 3 m are 9.84251968504 ft.
    await bring(
      {
        ...WORLD,
        'weather.csv': `station,date,tmin_f,tmax_f,dewpoint_f,wind_mph,wind_height_ft,solar_mj_m2,rain_in,eto_in
Dry Lake,2023-02-27,30.20,50.00,28.40,4.50,9.84251968503937,12.5604,0.00,0.08
Dry Lake,2023-02-28,,59.00,32.00,5.00,9.84251968503937,,0.10,
Dry Lake,2023-03-01,41.00,68.00,35.60,10.00,9.84251968503937,16.7472,0.00,0.15
`,
      },
      {},
      other,
    );
    expect(rounded(await stored())).toEqual(rounded(await stored(other)));
    expect(await stored()).toHaveLength(3);
  });

  it('changes nothing when it is imported again, and what it names when a value changed', async () => {
    await bring(WORLD);
    const files = { 'daily.csv': CODED_DAILY, 'hourly.csv': codedHourly(3), 'cell.csv': DAYMET, '2024.csv': GHCN };
    expect(countsOf(await bring(files))).toEqual({
      'daily.csv': '3 0 0 0',
      'hourly.csv': '3 0 0 0',
      'cell.csv': '3 0 0 0',
      '2024.csv': '2 0 0 0',
    });
    expect(countsOf(await bring(files))).toEqual({
      'daily.csv': '0 0 3 0',
      'hourly.csv': '0 0 3 0',
      'cell.csv': '0 0 3 0',
      '2024.csv': '0 0 2 0',
    });
    expect(countsOf(await bring({ 'daily.csv': CODED_DAILY.replace('68.00', '69.00') }))).toEqual({ 'daily.csv': '0 1 2 0' });
  });

  it('leaves what is stored of a day where it has no such column', async () => {
    await bring({ ...WORLD, 'weather.csv': 'station,date,tmax_f,wind_mph,wind_height_ft,rain_in\nDry Lake,2023-07-01,50,5,10,1\n' });
    await bring({ 'cell.csv': DAYMET });
    const day = (await stored()).find((one) => one['day'] === '2023-07-01');
    expect(day).toMatchObject({ tmax_c: 33.1, rain_mm: 0, wind_m_per_s: 2.2352, wind_height_m: 3.048 });
  });

  it('comes out as weather.csv, which brings the same days back', async () => {
    await bring({ ...WORLD, 'cell.csv': DAYMET, 'hourly.csv': codedHourly(2) });
    const files = inputsOf(await exportOf(product, organization));
    const other = await product.organization();
    await importInto(product, other, files);
    expect(rounded(await stored(other))).toEqual(rounded(await stored()));
    expect(inputsOf(await exportOf(product, other))).toEqual(files);
  });

  it('stores no row of a file in which a row is wrong, unless the good ones are wished', async () => {
    await bring(WORLD);
    const report = await bring({ 'daily.csv': CODED_DAILY.replace('68.00', 'warm') });
    expect([report.written, report.problemsTotal, countsOf(report)]).toEqual([false, 1, { 'daily.csv': '2 0 0 1' }]);
    expect(await stored()).toEqual([]);
  });
});

describe('a meter’s feed', () => {
  const elm = { property: 'Elm', meter: 'M1' };
  it('stores usage, and the same again changes nothing', async () => {
    await bring(WORLD);
    expect(countsOf(await bring({ 'feed.xml': feed() }, elm))).toEqual({ 'feed.xml': '3 0 0 0' });
    expect(countsOf(await bring({ 'feed.xml': feed() }, elm))).toEqual({ 'feed.xml': '0 0 3 0' });
    expect(
      await product.database.admin(
        'select day::text, start_seconds, length_seconds, volumes, unit from usage_day where organization_id = $1',
        [organization],
      ),
    ).toEqual([
      {
        day: '2024-06-01',
        start_seconds: [0, 3600, 7200],
        length_seconds: [3600, 3600, 3600],
        volumes: [123.4, 123.5, 123.6],
        unit: 'gal',
      },
    ]);
  });

  it('stores registers as readings of the feed, to be differenced like any other', async () => {
    await bring(WORLD);
    const text = feed({
      type: { accumulationBehaviour: '1', powerOfTenMultiplier: '0' },
      readings: interval(MIDNIGHT, 1000) + interval(MIDNIGHT + 86_400, 1040),
    });
    expect(countsOf(await bring({ 'feed.xml': text }, elm))).toEqual({ 'feed.xml': '2 0 0 0' });
    expect(countsOf(await bring({ 'feed.xml': text }, elm))).toEqual({ 'feed.xml': '0 0 2 0' });
    expect(
      await product.database.admin('select register, source from reading where organization_id = $1 order by register', [organization]),
    ).toEqual([
      { register: 1000, source: 'feed' },
      { register: 1040, source: 'feed' },
    ]);
  });
});

describe('an upload', () => {
  const OURS = { 'x-rillbook-request': '1' };
  const ask = (where: string, init: RequestInit = {}, who = office): Promise<Response> =>
    fetch(`${product.url}${where}`, { ...init, headers: { cookie: who.cookie, ...OURS, ...init.headers } });
  const upload = async (files: Files) => {
    const form = new FormData();
    for (const [name, content] of Object.entries(files)) form.append('files', new Blob([content]), name);
    return (await ask('/api/imports', { method: 'POST', body: form })).json();
  };
  const json = (body: unknown): RequestInit => ({
    method: 'POST',
    body: JSON.stringify(body),
    headers: { 'content-type': 'application/json' },
  });
  const mean = (id: string, files: unknown) => ask(`/api/imports/${id}/meanings`, json({ files }));

  it('asks whose days a file holds and how high its wind was measured, checks again, and imports', async () => {
    await bring({ ...WORLD, 'stations.csv': `${WORLD['stations.csv']}Wet Lake,37,-115,2000\n` });
    const body = await upload({ 'download.csv': CODED_DAILY, 'feed.xml': feed() });
    expect(body.files).toMatchObject([
      { name: 'feed.xml', status: 'read', new: 3, recognized: { layout: 'espi', belongsTo: 'meter', property: 'Elm', meter: 'M1' } },
      {
        name: 'download.csv',
        status: 'refused',
        file: 'weather',
        recognized: { layout: 'coded-daily', belongsTo: 'station', station: null, asksWindHeight: true, windHeightM: null },
        problems: [{ code: 'STATION_NOT_CHOSEN', expected: 'Dry Lake, Wet Lake' }],
      },
    ]);
    const half = await (await mean(body.id, { 'download.csv': { station: 'Wet Lake' } })).json();
    expect(half.files[1].problems[0].code).toBe('WIND_HEIGHT_NOT_STATED');
    const said = await mean(body.id, { 'download.csv': { station: 'Wet Lake', windHeightM: 3 } });
    expect(said.status).toBe(200);
    const whole = await said.json();
    expect(whole).toMatchObject({ problemsTotal: 0, files: [{ new: 3 }, { new: 3, recognized: { station: 'Wet Lake', windHeightM: 3 } }] });
    expect(await (await ask(`/api/imports/${body.id}`)).json()).toEqual(whole);
    expect((await ask(`/api/imports/${body.id}/accept`, json({ rows: 'all' }))).status).toBe(202);
    expect((await mean(body.id, {})).status).toBe(409);
    await settled();
    const days = await product.database.admin(
      'select s.name, count(*)::int from weather_day d join weather_station s on s.id = d.station_id where d.organization_id = $1 group by 1',
      [organization],
    );
    expect(days).toEqual([{ name: 'Wet Lake', count: 3 }]);
  });

  it('gives the refused lines of each file back, which can be mended and uploaded as they are', async () => {
    await bring(WORLD);
    const hourly = codedHourly(2, (hour, day) => (hour === 3 && day === 1 ? 'hot,40,10,5' : '50,40,10,5'));
    const body = await upload({
      'daily.csv': CODED_DAILY.replace('68.00', 'warm'),
      'hourly.csv': hourly,
      'year.csv': GHCN.replace(',289,', ',28.9F,'),
    });
    const said = await (await mean(body.id, { 'daily.csv': { windHeightM: 3 }, 'hourly.csv': { windHeightM: 3 } })).json();
    expect(said.files).toMatchObject([
      { name: 'daily.csv', new: 2, wrong: 1, rejectedAs: 'weather-2' },
      { name: 'hourly.csv', new: 1, wrong: 1, rejectedAs: 'weather-3' },
      { name: 'year.csv', new: 1, wrong: 1, rejectedAs: 'weather-4' },
    ]);
    const given = async (name: string): Promise<string> => (await ask(`/api/imports/${body.id}/rejected/${name}`)).text();
    expect((await given('weather-2')).split('\n')).toEqual([
      'YEAR,MONTH,DAY,MN,MX,SR,YM,UA,PP,ETRS,ETOS,problem',
      expect.stringMatching(/^2023,03,01,41.00,warm,.*MX: /),
      '',
    ]);
    const hours = await given('weather-3');
    expect(hours.split('\n')).toHaveLength(26);
    const year = await given('weather-4');
    expect(year).toMatch(/^id,date,element,value,mflag,qflag,sflag,obstime,problem\n/);
    const mended = await upload({
      'mended-1.csv': (await given('weather-2')).replace('warm', '68.00'),
      'mended-2.csv': hours.replace('hot', '50'),
      'mended-3.csv': year.replace('28.9F', '289'),
    });
    const again = await (await mean(mended.id, { 'mended-1.csv': { windHeightM: 3 }, 'mended-2.csv': { windHeightM: 3 } })).json();
    expect(again).toMatchObject({ problemsTotal: 0, files: [{ new: 1 }, { new: 1 }, { new: 1 }] });
    expect((await ask(`/api/imports/${body.id}/rejected/weather-9`)).status).toBe(404);
    expect((await ask(`/api/imports/${body.id}/rejected/..%2Frecord`)).status).toBe(404);
  });

  it('refuses what is no meaning, and strangers', async () => {
    await bring(WORLD);
    const { id } = await upload({ 'daily.csv': CODED_DAILY });
    for (const files of [
      null,
      [],
      'Dry Lake',
      { 'daily.csv': { windHeightM: -2 } },
      { 'daily.csv': { windHeightM: '3' } },
      { 'daily.csv': { station: 7 } },
    ])
      expect((await mean(id, files)).status).toBe(400);
    const stranger = await product.somebody(await product.organization(), 'owner');
    expect((await ask(`/api/imports/${id}/meanings`, json({ files: {} }), stranger)).status).toBe(404);
    const crew = await product.somebody(organization, 'crewLead');
    expect((await ask(`/api/imports/${id}/meanings`, json({ files: {} }), crew)).status).toBe(403);
  });
});
