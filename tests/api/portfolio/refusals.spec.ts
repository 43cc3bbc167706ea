import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aClient, aController, aMeter, aProperty, aWaterSupplier, aZone, type Built } from '../../support/builders.js';
import { type Somebody, startApp, type TestApp } from '../../support/test-app.js';

let product: TestApp;
let office: Somebody;
/** what each kind of thing is created from when nothing is wrong */
let valid: Record<string, Record<string, unknown>>;
let controller: Built;
let elsewhere: { meter: Built; controller: Built };

beforeAll(async () => {
  product = await startApp();
  office = await product.somebody(await product.organization(), 'office');
  const { database } = product;
  const client = await aClient(database, office.organizationId);
  const place = await aProperty(database, office.organizationId, { client_id: client.id });
  const other = await aProperty(database, office.organizationId);
  controller = await aController(database, place, { name: 'A', stations: 6 });
  const zone = await aZone(database, place, { name: 'Front lawn', controller_id: controller.id, station: 2 });
  elsewhere = {
    meter: await aMeter(database, other, { name: 'Other meter' }),
    controller: await aController(database, other, { name: 'B' }),
  };
  const supplier = await aWaterSupplier(database, office.organizationId);
  valid = {
    Client: { name: 'New client' },
    Property: { name: 'New', clientId: client.id, timeZone: 'America/Denver' },
    Meter: { propertyId: place.id, name: 'New', kind: 'irrigation', water: 'potable', unit: 'CCF' },
    Controller: { propertyId: place.id, name: 'New', stations: 12 },
    Zone: { propertyId: place.id, name: 'New', areaM2: 100, method: 'spray' },
    Planting: { zoneId: zone.id, species: 'New' },
    BackflowAssembly: { propertyId: place.id, name: 'New' },
    WateringRule: { supplierId: supplier.id, name: 'New' },
    RateTier: { supplierId: supplier.id, effectiveFrom: '2026-01-01', tier: 1, unit: 'CCF', price: 4 },
    WaterSupplier: { name: 'New' },
    WeatherStation: { name: 'New', latitude: 38, longitude: -121 },
  };
});
afterAll(() => product.close());

const create = (kind: string, wrong: Record<string, unknown>) =>
  office.send(`mutation($input: ${kind}Input!) { create${kind}(input: $input) { __typename } }`, { input: { ...valid[kind], ...wrong } });

const REFUSED: [kind: string, field: string, value: unknown, expected: string][] = [
  ['Client', 'name', ' ', 'a name of 1 to 200 characters'],
  ['Client', 'notToExceed', -1, '0 to 100000000'],
  ['Property', 'name', 'Mill\u200bPond', 'a name without characters that cannot be seen'],
  ['Property', 'timeZone', 'PST', 'a time zone by its IANA name, such as America/Los_Angeles'],
  ['Property', 'timeZone', 'America/Elderbrook', 'a time zone by its IANA name, such as America/Los_Angeles'],
  ['Property', 'timeZone', '-08:00', 'a time zone by its IANA name, such as America/Los_Angeles'],
  ['Property', 'allowanceFrom', 'habit', 'one of ordinance, contract'],
  ['Property', 'allowanceEtaf', 1.2, 'above 0 and at most 1'],
  ['Property', 'allowanceLitresPerMonth', [1, 2, 3], 'twelve numbers, January to December'],
  ['Property', 'allowanceLitresPerMonth', [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, -12], 'twelve numbers, each 0 to 10000000000 L'],
  ['Property', 'specialLandscapeAreaM2', -5, '0 to 100000000 m²'],
  ['Meter', 'name', 'None', 'another name: none has a meaning of its own'],
  ['Meter', 'kind', 'indoor', 'one of irrigation, mixed'],
  ['Meter', 'water', 'rain', 'one of potable, recycled, well'],
  ['Meter', 'unit', 'ccf', 'one of CCF, HCF, kgal, gal, ft3, m3, L'],
  ['Meter', 'multiplier', 0, 'above 0 and at most 1000000'],
  ['Meter', 'digits', 13, '1 to 12'],
  ['Meter', 'indoorLPerDay', -1, '0 to 40000000 L a day'],
  ['Meter', 'pricePerUnit', -0.01, '0 to 100000000'],
  ['Controller', 'stations', 0, '1 to 500'],
  ['Controller', 'adjustScope', 'zone', 'one of controller, program'],
  ['Controller', 'monthlyAdjustPercent', [100], 'twelve numbers, January to December'],
  ['Zone', 'areaM2', 0, 'above 0 and at most 10000000 m²'],
  ['Zone', 'method', 'flood', 'one of spray, rotor, rotary nozzle, bubbler, microspray, drip, subsurface drip, hand'],
  [
    'Zone',
    'plants',
    'cactus',
    'one of turf cool-season, turf warm-season, trees, shrubs, groundcover, perennials, annuals, vegetables, mixed',
  ],
  ['Zone', 'soil', 'mud', 'one of sand, loamy sand, sandy loam, loam, silt loam, clay loam, silty clay, clay'],
  ['Zone', 'duLq', 70, 'above 0 and at most 1'],
  ['Zone', 'leachingFraction', 1, '0 or more and below 1'],
  ['Zone', 'fillMinutes', 61, '0 to 60 min'],
  ['Zone', 'flowSource', 'guessed', 'one of measured, nameplate, assumed'],
  ['Planting', 'coverPercent', 120, '0 to 100 %'],
  ['Planting', 'waterNeed', 'thirsty', 'one of very low, low, moderate, high'],
  ['WateringRule', 'allowedDays', 'Mon Mon', 'days such as Mon Wed Fri, or odd, even, or none where nothing may be watered'],
  [
    'WateringRule',
    'plants',
    'turf cool-season, cactus',
    'some of turf cool-season, turf warm-season, trees, shrubs, groundcover, perennials, annuals, vegetables, mixed, separated by commas',
  ],
  ['RateTier', 'price', -1, '0 to 100000000'],
  ['RateTier', 'unit', 'barrel', 'one of CCF, HCF, kgal, gal, ft3, m3, L'],
  ['WeatherStation', 'latitude', 91, '-90 to 90 degrees'],
  ['WaterSupplier', 'name', '', 'a name of 1 to 200 characters'],
];

describe('a value that cannot be is refused by name, with what was found and what was expected', () => {
  it.each(REFUSED)('%s %s %j', async (kind, field, value, expected) => {
    const { data, errors } = await create(kind, { [field]: value });
    expect(data).toBeNull();
    expect(errors[0]!.extensions).toEqual({ code: 'VALUE_REFUSED', details: { field, found: value, expected } });
    expect(errors[0]!.message).toBe(`${field}: found ${JSON.stringify(value)}, expected ${expected}.`);
  });
});

const refused = async (kind: string, wrong: Record<string, unknown>) => (await create(kind, wrong)).errors[0]?.extensions;
const because = (field: string, found: unknown, expected: string) => ({ code: 'VALUE_REFUSED', details: { field, found, expected } });

describe('values that contradict each other are refused', () => {
  it('an e-mail address that is none, named among others', async () => {
    expect(await refused('Client', { emails: ['board@example.test', 'board at example'] })).toEqual(
      because('emails', 'board at example', 'an e-mail address'),
    );
  });

  it('half a position, and a contract without its table', async () => {
    expect(await refused('Property', { latitude: 38 })).toEqual(because('longitude', null, 'a latitude and a longitude, or neither'));
    expect(await refused('Property', { allowanceFrom: 'contract' })).toEqual(
      because('allowanceLitresPerMonth', null, 'twelve numbers, January to December, where the allowance comes from a contract'),
    );
  });

  it('a register with more digits than the meter has, a meter removed before it was installed', async () => {
    expect(await refused('Meter', { digits: 4, firstRegister: 10000 })).toEqual(
      because('firstRegister', 10000, 'a number of at most 4 digits before the point, as this meter has'),
    );
    expect(await refused('Meter', { installedOn: '2026-02-01', removedOn: '2026-01-31' })).toEqual(
      because('removedOn', '2026-01-31', 'a day not before the day it was installed (2026-02-01)'),
    );
  });
});

describe('a zone, a rule and a tier are refused what does not go together', () => {
  it('a station that the controller does not have, that another zone has, or without a controller', async () => {
    expect(await refused('Zone', { controllerId: controller.id, station: 7 })).toEqual(
      because('station', 7, '1 to 6, the stations of controller A'),
    );
    expect(await refused('Zone', { controllerId: controller.id, station: 2 })).toEqual(
      because('station', 2, 'a free station of controller A; this one waters zone Front lawn'),
    );
    expect(await refused('Zone', { station: 3 })).toEqual(
      because('controllerId', null, 'a controller together with its station, or neither'),
    );
    expect(await refused('Zone', { controllerId: controller.id })).toEqual(
      because('station', null, 'a station together with its controller, or neither'),
    );
  });

  it('a meter or controller of another property, a meter on an unmetered zone', async () => {
    expect(await refused('Zone', { meterId: elsewhere.meter.id })).toEqual(
      because('meterId', 'Other meter', 'a meter of the same property'),
    );
    expect(await refused('Zone', { controllerId: elsewhere.controller.id, station: 1 })).toEqual(
      because('controllerId', 'B', 'a controller of the same property'),
    );
    expect(await refused('Zone', { meterId: elsewhere.meter.id, unmetered: true })).toEqual(
      because('unmetered', true, 'either a meter or unmetered, not both'),
    );
  });

  it("half a blocked time, a rule or test that ends before it begins, half a tier's end", async () => {
    expect(await refused('WateringRule', { blockedFrom: '10:00' })).toEqual(
      because('blockedUntil', null, 'both ends of the blocked hours, or neither'),
    );
    expect(await refused('WateringRule', { effectiveFrom: '2026-05-01', effectiveUntil: '2026-04-30' })).toEqual(
      because('effectiveUntil', '2026-04-30', 'a day not before the day it begins (2026-05-01)'),
    );
    expect(await refused('BackflowAssembly', { lastTestedOn: '2026-05-01', nextTestDueOn: '2025-05-01' })).toEqual(
      because('nextTestDueOn', '2025-05-01', 'a day not before the last test (2026-05-01)'),
    );
    expect(await refused('RateTier', { upTo: 10 })).toEqual(
      because(
        'upToIs',
        null,
        'where the tier ends together with what that counts (volume, share of allowance), or neither for the last tier',
      ),
    );
  });

  it("things that are not there, retired, or another organization's", async () => {
    const stranger = await aClient(product.database, await product.organization());
    const retired = await aClient(product.database, office.organizationId, { retired_at: new Date() });
    for (const id of [stranger.id, retired.id, '7'])
      expect(await refused('Property', { clientId: id })).toEqual({ code: 'NOT_FOUND', details: { thing: 'client', id } });
    expect(await refused('Zone', { propertyId: elsewhere.meter.id })).toEqual({
      code: 'NOT_FOUND',
      details: { thing: 'property', id: elsewhere.meter.id },
    });
  });
});
