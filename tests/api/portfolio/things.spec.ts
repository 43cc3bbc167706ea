import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aClient, aController, aMeter, aProperty, aWaterSupplier, aWeatherStation, aZone, type Built } from '../../support/builders.js';
import { KINDS, type Kind } from './kinds.js';
import { type Somebody, startApp, type TestApp } from '../../support/test-app.js';

let product: TestApp;
let office: Somebody;
let place: Built;
const kinds: Record<string, Kind> = {};

beforeAll(async () => {
  product = await startApp();
  office = await product.somebody(await product.organization(), 'office');
  const { database } = product;
  const client = await aClient(database, office.organizationId);
  const station = await aWeatherStation(database, office.organizationId);
  const supplier = await aWaterSupplier(database, office.organizationId);
  place = await aProperty(database, office.organizationId, { client_id: client.id });
  const controller = await aController(database, place);
  const meter = await aMeter(database, place);
  const zone = await aZone(database, place);
  for (const [name, of] of Object.entries(KINDS)) kinds[name] = of({ client, station, supplier, place, controller, meter, zone });
});
afterAll(() => product.close());

/** Inputs whose field is a thing of its own in the answer. */
const POINTERS = new Set(['Property.clientId', 'Property.weatherStationId', 'Property.waterSupplierId']);
const NAMES = Object.keys(KINDS);

const shownOf = (kind: string, values: object): Record<string, unknown> =>
  Object.fromEntries(Object.entries(values).filter(([field]) => !POINTERS.has(`${kind}.${field}`)));

async function doIt(kind: string, deed: 'create' | 'change', variables: Record<string, unknown>) {
  const fields = Object.keys(shownOf(kind, kinds[kind]!.whole)).join(' ');
  const [declared, handed] = deed === 'create' ? ['', ''] : ['$id: ID!, $version: Int!, ', 'id: $id, version: $version, '];
  const answer = await office.send(
    `mutation(${declared}$input: ${kind}Input!) { ${deed}${kind}(${handed}input: $input) { __typename ... on ${kind} { id version ${fields} } ... on NameTaken { name } ... on ChangedMeanwhile { version changedBy } } }`,
    variables,
  );
  expect(answer.errors).toEqual([]);
  return answer.data[`${deed}${kind}`];
}

async function retire(kind: string, id: string, version: number) {
  const answer = await office.send(
    `mutation($id: ID!, $version: Int!) { retire${kind}(id: $id, version: $version) { __typename ... on ${kind} { version retiredAt } ... on StillInUse { by count } ... on ChangedMeanwhile { version } } }`,
    { id, version },
  );
  expect(answer.errors).toEqual([]);
  return answer.data[`retire${kind}`];
}

it.each(NAMES)('%s: all that is said of it is kept; what a change leaves out is gone; it is retired once', async (kind) => {
  const { whole, least, left } = kinds[kind]!;
  const made = await doIt(kind, 'create', { input: whole });
  expect(made).toEqual({ __typename: kind, id: expect.any(String), version: 1, ...shownOf(kind, whole) });
  const changed = await doIt(kind, 'change', { id: made.id, version: 1, input: least });
  expect(changed).toEqual({ __typename: kind, id: made.id, version: 2, ...shownOf(kind, least), ...left });
  expect(await doIt(kind, 'change', { id: made.id, version: 1, input: whole })).toEqual({
    __typename: 'ChangedMeanwhile',
    version: 2,
    changedBy: 'The office',
  });
  expect(await retire(kind, made.id, 1)).toEqual({ __typename: 'ChangedMeanwhile', version: 2 });
  expect(await retire(kind, made.id, 2)).toEqual({ __typename: kind, version: 3, retiredAt: expect.any(String) });
});

it.each(NAMES)('%s: a second one of the same name is refused by name', async (kind) => {
  const { least } = kinds[kind]!;
  const twice = {
    ...least,
    ...('name' in least && { name: 'Twice' }),
    ...('species' in least && { species: 'Twice' }),
    ...('tier' in least && { tier: 7 }),
  };
  expect((await doIt(kind, 'create', { input: twice })).__typename).toBe(kind);
  expect(await doIt(kind, 'create', { input: twice })).toEqual({
    __typename: 'NameTaken',
    name: kind === 'RateTier' ? 'tier 7 from 2026-01-01' : 'Twice',
  });
});

it.each(NAMES)('%s: sent again under its id, also at once, it is the same one; another under that id is refused', async (kind) => {
  const { least } = kinds[kind]!;
  const id = randomUUID();
  const input = { ...least, ...('species' in least ? { species: 'Again' } : 'tier' in least ? { tier: 9 } : { name: 'Again' }) };
  const send = (sent: object) =>
    office.send(
      `mutation($id: ID!, $input: ${kind}Input!) { create${kind}(deviceRecordId: $id, input: $input) { __typename ... on ${kind} { id version } } }`,
      { id, input: sent },
    );
  const answers = [...(await Promise.all([send(input), send(input)])), await send(input)];
  for (const { data } of answers) expect(data[`create${kind}`]).toEqual({ __typename: kind, id, version: 1 });
  expect(
    (await send({ ...input, ...('tier' in input ? { tier: 8 } : 'name' in input ? { name: 'Other' } : { species: 'Other' }) })).errors[0],
  ).toMatchObject({
    extensions: { code: 'VALUE_REFUSED', details: { field: 'deviceRecordId', found: id } },
  });
});

it('a blank text is none, and names lose the spaces around them', async () => {
  const made = await doIt('BackflowAssembly', 'create', { input: { propertyId: place.id, name: '  By the gate ', location: '  ' } });
  expect(made).toMatchObject({ name: 'By the gate', location: null });
});

describe('what others still need', () => {
  it('is not retired: a client, a supplier, a station with a property; a meter and a controller with a zone', async () => {
    const { database } = product;
    const { organizationId } = office;
    const [client, supplier, station] = [
      await aClient(database, organizationId),
      await aWaterSupplier(database, organizationId),
      await aWeatherStation(database, organizationId),
    ];
    const site = await aProperty(database, organizationId, {
      client_id: client.id,
      water_supplier_id: supplier.id,
      weather_station_id: station.id,
    });
    const [meter, controller] = [await aMeter(database, site), await aController(database, site)];
    const zone = await aZone(database, site, { meter_id: meter.id, controller_id: controller.id, station: 3 });
    for (const [kind, row] of [
      ['Client', client],
      ['WaterSupplier', supplier],
      ['WeatherStation', station],
    ] as const)
      expect(await retire(kind, row.id, 1)).toEqual({ __typename: 'StillInUse', by: 'property', count: 1 });
    for (const [kind, row] of [
      ['Meter', meter],
      ['Controller', controller],
    ] as const)
      expect(await retire(kind, row.id, 1)).toEqual({ __typename: 'StillInUse', by: 'zone', count: 1 });
    expect((await retire('Zone', zone.id, 1)).__typename).toBe('Zone');
    expect((await retire('Property', site.id, 1)).__typename).toBe('Property');
    for (const [kind, row] of [
      ['Meter', meter],
      ['Controller', controller],
      ['Client', client],
      ['WaterSupplier', supplier],
      ['WeatherStation', station],
    ] as const)
      expect((await retire(kind, row.id, 1)).__typename).toBe(kind);
  });
});

it('what zones need is neither moved away from them nor left with too few stations', async () => {
  const { database } = product;
  const site = await aProperty(database, office.organizationId);
  const [meter, controller] = [await aMeter(database, site), await aController(database, site)];
  await aZone(database, site, { meter_id: meter.id, controller_id: controller.id, station: 9 });
  const change = async (kind: string, row: Built, input: Record<string, unknown>) =>
    (
      await office.send(`mutation($id: ID!, $input: ${kind}Input!) { change${kind}(id: $id, version: 1, input: $input) { __typename } }`, {
        id: row.id,
        input: { ...kinds[kind]!.least, ...input },
      })
    ).errors[0]!.extensions.details;
  expect(await change('Meter', meter, { propertyId: place.id })).toEqual({
    field: 'propertyId',
    found: place.id,
    expected: 'the property of the zones that count with this meter (1): give them another meter first',
  });
  expect(await change('Controller', controller, { propertyId: place.id, stations: 12 })).toEqual({
    field: 'propertyId',
    found: place.id,
    expected: 'the property of the zones that this controller waters (1): give them another controller first',
  });
  expect(await change('Controller', controller, { propertyId: site.id, stations: 8 })).toEqual({
    field: 'stations',
    found: 8,
    expected: '9 or more, for a zone stands at station 9',
  });
});
