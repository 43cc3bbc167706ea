import { megajoulesPerSquareMetreDayFromLangleys } from '@rillbook/units/radiation.js';
import { metresPerSecondFromMilesPerHour } from '@rillbook/units/speed.js';
import { celsiusFromFahrenheit } from '@rillbook/units/temperature.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { WeatherChanged } from '../../../apps/api/src/features/weather/weather-changed.event.js';
import { Events } from '../../../apps/api/src/platform/records/events.js';
import { aProperty, aWeatherDay, aWeatherStation, type Built } from '../../support/builders.js';
import { type Somebody, startApp, type TestApp } from '../../support/test-app.js';

let product: TestApp;
let office: Somebody;
let station: Built;
const heard: WeatherChanged[] = [];

beforeAll(async () => {
  product = await startApp();
  office = await product.somebody(await product.organization(), 'office');
  station = await aWeatherStation(product.database, office.organizationId);
  product.app.get(Events).on(WeatherChanged, async (_, event) => void heard.push(event));
});
afterAll(() => product.close());

const ETO = 'day tmaxC rainMm etoMm etoMethod etoAssumed etoReason';
const days = (who: Somebody, stationId: string, from: string, until: string) =>
  who.send(`query($id: ID!, $from: Date!, $until: Date!) { weatherDays(stationId: $id, from: $from, until: $until) { ${ETO} } }`, {
    id: stationId,
    from,
    until,
  });
const record = (who: Somebody, input: Record<string, unknown>) =>
  who.send(`mutation($input: WeatherDayInput!) { recordWeatherDay(input: $input) { stationId ${ETO} } }`, {
    input: { stationId: station.id, ...input },
  });

describe('reference evapotranspiration of kept days', () => {
  it('is that of a published day: 8.83 mm at Fallon, Nevada, on 21 June 2015', async () => {
    // USBR AgriMet values; ETo as published by Ref-ET 4.1 (University of Idaho): see tests/golden/asce-standardized/PROVENANCE.md.
    const fallon = await aWeatherStation(product.database, office.organizationId, {
      latitude: 39.4575,
      longitude: -118.77,
      elevation_m: 1208.5,
    });
    await aWeatherDay(product.database, fallon, {
      day: '2015-06-21',
      tmax_c: celsiusFromFahrenheit(93.8),
      tmin_c: celsiusFromFahrenheit(52.22),
      dew_point_c: celsiusFromFahrenheit(22.52),
      wind_m_per_s: metresPerSecondFromMilesPerHour(6.78),
      wind_height_m: 3,
      solar_mj_per_m2: megajoulesPerSquareMetreDayFromLangleys(721.52),
    });
    const [day] = (await days(office, fallon.id, '2015-06-21', '2015-06-21')).data.weatherDays;
    expect(Math.abs(day.etoMm - 8.83)).toBeLessThan(0.012);
    expect(day).toMatchObject({ etoMethod: 'penman-monteith', etoAssumed: [] });
  });

  it('says which method was used and what was assumed; without temperatures it is not known', async () => {
    const plain = await aWeatherStation(product.database, office.organizationId);
    await aWeatherDay(product.database, plain, { day: '2026-07-01' });
    await aWeatherDay(product.database, plain, { day: '2026-07-02', solar_mj_per_m2: 28 });
    await aWeatherDay(product.database, plain, { day: '2026-07-03', tmax_c: null, given_eto_mm: 6.5 });
    await aWeatherDay(product.database, plain, { day: '2026-07-05', tmax_c: null, rain_mm: 3 });
    const found = (await days(office, plain.id, '2026-07-01', '2026-07-31')).data.weatherDays;
    expect(found.map((day: { day: string; etoMethod: string; etoAssumed: string[] }) => [day.day, day.etoMethod, day.etoAssumed])).toEqual([
      ['2026-07-01', 'hargreaves-samani', ['humidity', 'wind', 'solar-radiation']],
      ['2026-07-02', 'penman-monteith', ['humidity', 'wind']],
      ['2026-07-03', 'given', []],
      ['2026-07-04', null, []],
      ['2026-07-05', null, []],
    ]);
    expect(found[2].etoMm).toBe(6.5);
    expect(found.slice(3).map((day: { etoReason: string }) => day.etoReason)).toEqual(['not-recorded', 'no-temperatures']);
    expect(found[4]).toMatchObject({ etoMm: null, rainMm: 3 });
  });

  it('is asked of a span that can be', async () => {
    expect((await days(office, station.id, '2026-07-02', '2026-07-01')).errors[0]!.extensions).toMatchObject({
      code: 'VALUE_REFUSED',
      details: { field: 'until' },
    });
    expect((await days(office, station.id, '1990-01-01', '2026-07-01')).errors[0]!.extensions).toMatchObject({
      code: 'VALUE_REFUSED',
      details: { field: 'until' },
    });
    expect((await days(office, 'nowhere', '2026-07-01', '2026-07-01')).errors[0]!.extensions).toEqual({
      code: 'NOT_FOUND',
      details: { thing: 'weather station', id: 'nowhere' },
    });
  });
});

describe('recording a day', () => {
  it('keeps it, keeps it again in its place, and tells whoever reckons with it', async () => {
    heard.length = 0;
    const first = await record(office, { day: '2026-06-01', tmaxC: 31, tminC: 14, rainMm: 0 });
    expect(first.data.recordWeatherDay).toMatchObject({
      stationId: station.id,
      day: '2026-06-01',
      tmaxC: 31,
      rainMm: 0,
      etoMethod: 'hargreaves-samani',
    });
    await product.database.admin(`update weather_day set wind_height_m = 3, typed = '{"tmax_f": "88"}' where station_id = $1`, [
      station.id,
    ]);
    const again = await record(office, { day: '2026-06-01', tmaxC: 30, tminC: 14 });
    expect(again.data.recordWeatherDay).toMatchObject({ tmaxC: 30, rainMm: null });
    const kept = await product.database.admin('select tmax_c, rain_mm, wind_height_m, typed from weather_day where station_id = $1', [
      station.id,
    ]);
    expect(kept).toEqual([{ tmax_c: 30, rain_mm: null, wind_height_m: 3, typed: {} }]);
    expect(heard).toEqual([
      new WeatherChanged(station.id, '2026-06-01', '2026-06-01'),
      new WeatherChanged(station.id, '2026-06-01', '2026-06-01'),
    ]);
    expect((await office.send('{ weatherStations { name lastDay } }')).data.weatherStations).toContainEqual({
      name: station['name'],
      lastDay: '2026-06-01',
    });
  });

  it('takes a humidity a little above saturation, marks it, and reckons with saturated air', async () => {
    const values = { stationId: station.id, tmaxC: 24, tminC: 12, rhMinPercent: 40, windMPerS: 2, solarMjPerM2: 20 };
    const marked = async (rhMaxPercent: number) => {
      const { data } = await office.send(
        'mutation($input: WeatherDayInput!) { recordWeatherDay(input: $input) { etoMm marks { value reason effect } } }',
        { input: { ...values, day: '2026-06-02', rhMaxPercent } },
      );
      return data.recordWeatherDay;
    };
    const [above, saturated] = [await marked(103), await marked(100)];
    expect(above.marks).toEqual([{ value: 'rhMaxPercent', reason: 'above-saturation', effect: 'kept' }]);
    expect([saturated.marks, above.etoMm]).toEqual([[], saturated.etoMm]);
  });

  it('does not take inches of reference ET among millimetres for the day', async () => {
    const { data } = await office.send(
      'mutation($input: WeatherDayInput!) { recordWeatherDay(input: $input) { etoMethod marks { value reason effect } } }',
      { input: { stationId: station.id, day: '2026-06-03', tmaxC: 31, tminC: 14, dewPointC: 11, solarMjPerM2: 28, givenEtoMm: 0.27 } },
    );
    expect(data.recordWeatherDay).toEqual({
      etoMethod: 'penman-monteith',
      marks: [{ value: 'givenEtoMm', reason: 'far-from-computed', effect: 'refused' }],
    });
  });

  const REFUSED: [field: string, input: Record<string, unknown>][] = [
    ['tmaxC', { tmaxC: 88 }],
    ['tminC', { tmaxC: 20, tminC: 21 }],
    ['rhMinPercent', { rhMaxPercent: 40, rhMinPercent: 60 }],
    ['dewPointC', { tmaxC: 10, dewPointC: 12 }],
    ['rhMaxPercent', { rhMaxPercent: 105.1 }],
    ['windMPerS', { windMPerS: -1 }],
    ['solarMjPerM2', { solarMjPerM2: 300 }],
    ['rainMm', { rainMm: -0.1 }],
    ['givenEtoMm', { givenEtoMm: 31 }],
    ['day', {}],
    ['day', { day: '2199-01-01', rainMm: 1 }],
  ];
  it.each(REFUSED)('refuses %s of %j by name', async (field, input) => {
    const before = heard.length;
    const { data, errors } = await record(office, { day: '2026-06-02', ...input });
    expect(data).toBeNull();
    expect(errors[0]!.extensions).toMatchObject({ code: 'VALUE_REFUSED', details: { field } });
    expect(heard).toHaveLength(before);
  });
});

it('a day is recorded and read by the office, on a station of its own', async () => {
  const technician = await product.somebody(office.organizationId, 'technician');
  expect((await record(technician, { day: '2026-06-03', rainMm: 1 })).errors[0]!.extensions.code).toBe('NOT_ALLOWED');
  expect((await days(technician, station.id, '2026-06-01', '2026-06-02')).errors[0]!.extensions.code).toBe('NOT_ALLOWED');
  const stranger = await product.somebody(await product.organization(), 'owner');
  expect((await record(stranger, { day: '2026-06-03', rainMm: 1 })).errors[0]!.extensions).toEqual({
    code: 'NOT_FOUND',
    details: { thing: 'weather station', id: station.id },
  });
  expect((await days(stranger, station.id, '2026-06-01', '2026-06-02')).errors[0]!.extensions.code).toBe('NOT_FOUND');
});

it('a property shows the station whose weather it is reckoned with', async () => {
  const place = await aProperty(product.database, office.organizationId, { weather_station_id: station.id });
  expect((await office.send('query($id: ID!) { property(id: $id) { weatherStation { id } } }', { id: place.id })).data.property).toEqual({
    weatherStation: { id: station.id },
  });
});
