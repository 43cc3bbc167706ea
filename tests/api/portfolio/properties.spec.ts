import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aClient, aCrew, aMeter, aProperty, aStop, aZone, type Built, inCrew } from '../../support/builders.js';
import { type Somebody, startApp, type TestApp } from '../../support/test-app.js';

let product: TestApp;
let office: Somebody;
let technician: Somebody;
let resident: Somebody;
let ours: Built;
let theirs: Built;

const names = (answer: { data: { properties: { name: string }[] } }): string[] => answer.data.properties.map((property) => property.name);
const one = (who: Somebody, id: string, fields = 'id') => who.send(`query($id: ID!) { property(id: $id) { ${fields} } }`, { id });

beforeAll(async () => {
  product = await startApp();
  const organizationId = await product.organization();
  office = await product.somebody(organizationId, 'office');
  technician = await product.somebody(organizationId, 'technician');
  const client = await aClient(product.database, organizationId, { name: 'Quail Commons HOA' });
  resident = await product.somebody(organizationId, 'client', client.id);
  ours = await aProperty(product.database, organizationId, {
    client_id: client.id,
    name: 'Quail Commons North',
    address: '12 Larch Lane',
    city: 'Elderbrook',
    notes: 'Gate code 4417',
  });
  theirs = await aProperty(product.database, organizationId, { name: 'Old Mill', city: '100% Corners' });
  const crew = await aCrew(product.database, organizationId);
  await inCrew(product.database, crew, technician.memberId);
  await aStop(product.database, crew, ours);
});
afterAll(() => product.close());

describe('who sees which property', () => {
  it('shows all to the office, those with a stop to a crew, their own to a client', async () => {
    expect(names(await office.send('{ properties { name } }'))).toEqual(['Old Mill', 'Quail Commons North']);
    expect(names(await technician.send('{ properties { name } }'))).toEqual(['Quail Commons North']);
    expect(names(await resident.send('{ properties { name } }'))).toEqual(['Quail Commons North']);
  });

  it('answers the same for what is out of scope, absent, or no id at all', async () => {
    for (const who of [technician, resident]) expect((await one(who, theirs.id)).data).toEqual({ property: null });
    const stranger = await product.somebody(await product.organization(), 'owner');
    expect((await one(stranger, ours.id)).data).toEqual({ property: null });
    expect((await one(office, '3f0a3a5e-3f7e-4a34-8f54-0a2a3a5e3f7e')).data).toEqual({ property: null });
    expect((await one(office, "' or true --")).data).toEqual({ property: null });
  });

  it('no longer shows a crew the property whose stop was taken off the route', async () => {
    const crew = await aCrew(product.database, office.organizationId);
    const lead = await product.somebody(office.organizationId, 'crewLead');
    await inCrew(product.database, crew, lead.memberId);
    const stop = await aStop(product.database, crew, theirs);
    expect(names(await lead.send('{ properties { name } }'))).toEqual(['Old Mill']);
    await product.database.admin('update stop set retired_at = now() where id = $1', [stop.id]);
    expect(names(await lead.send('{ properties { name } }'))).toEqual([]);
  });

  it("shows a client no notes, no changes and no other client's properties", async () => {
    const fields = 'notes address client { name properties { name } } changes { id }';
    expect((await one(resident, ours.id, fields)).data.property).toEqual({
      notes: null,
      address: '12 Larch Lane',
      client: { name: 'Quail Commons HOA', properties: [{ name: 'Quail Commons North' }] },
      changes: [],
    });
    expect((await one(technician, ours.id, 'notes')).data.property).toEqual({ notes: 'Gate code 4417' });
  });

  it('lets neither crews nor clients change anything', async () => {
    for (const who of [technician, resident]) {
      const answer = await who.send('mutation($id: ID!) { retireProperty(id: $id, version: 1) { __typename } }', { id: ours.id });
      expect(answer.errors[0]!.extensions.code).toBe('NOT_ALLOWED');
    }
  });
});

describe('finding a property', () => {
  const found = async (who: Somebody, text: string) =>
    names(await who.send('query($text: String) { properties(text: $text) { name } }', { text }));

  it('looks in name, client, address and city, whatever the case', async () => {
    for (const text of ['commons north', 'quail commons hoa', 'LARCH', ' elderbrook '])
      expect(await found(office, text)).toEqual(['Quail Commons North']);
    expect(await found(office, 'no such place')).toEqual([]);
  });

  it('takes % and _ for letters', async () => {
    expect(await found(office, '100%')).toEqual(['Old Mill']);
    expect(await found(office, 'Q_ail')).toEqual([]);
    expect(await found(office, '%')).toEqual(['Old Mill']);
    expect(await found(office, '\\')).toEqual([]);
  });

  it('finds within the scope only', async () => {
    expect(await found(technician, 'mill')).toEqual([]);
  });
});

describe('what stands on a property', () => {
  it('shows what is in use, by name as people count', async () => {
    const place = await aProperty(product.database, office.organizationId);
    for (const name of ['Zone 10', 'Zone 2', 'Zone 1']) await aZone(product.database, place, { name });
    await aZone(product.database, place, { name: 'Zone 3', retired_at: new Date() });
    expect(
      (
        await one(
          office,
          place.id,
          'zones { name } meters { name } controllers { name } backflowAssemblies { name } waterSupplier { name } weatherStation { name }',
        )
      ).data.property,
    ).toEqual({
      zones: [{ name: 'Zone 1' }, { name: 'Zone 2' }, { name: 'Zone 10' }],
      meters: [],
      controllers: [],
      backflowAssemblies: [],
      waterSupplier: null,
      weatherStation: null,
    });
  });

  it('hides a retired property, keeps what stands on it, and shows it by its id', async () => {
    const place = await aProperty(product.database, office.organizationId, { name: 'Given back' });
    const meter = await aMeter(product.database, place);
    const retired = await office.send(
      'mutation($id: ID!) { retireProperty(id: $id, version: 1) { __typename ... on Property { retiredAt } } }',
      { id: place.id },
    );
    expect(retired.data.retireProperty).toMatchObject({ __typename: 'Property', retiredAt: expect.stringMatching(/^\d{4}-/) });
    expect(names(await office.send('{ properties { name } }'))).not.toContain('Given back');
    expect((await one(office, place.id, 'meters { id }')).data.property).toEqual({ meters: [{ id: meter.id }] });
  });
});

describe('the record of changes', () => {
  const rename = (who: Somebody, meter: Built, name: string, version: number) =>
    who.send(
      'mutation($id: ID!, $version: Int!, $input: MeterInput!) { changeMeter(id: $id, version: $version, input: $input) { __typename ... on Meter { version } } }',
      {
        id: meter.id,
        version,
        input: { propertyId: meter['property_id'], name, kind: 'irrigation', water: 'potable', unit: 'CCF', digits: 6, resolution: 1 },
      },
    );

  it('names who changed what, of a thing and of all that stands on a property', async () => {
    const meter = await aMeter(product.database, ours, { name: 'Street' });
    await rename(office, meter, 'Street meter', 1);
    await rename(office, meter, 'Meter at the street', 2);
    const change = { thing: 'meter', thingId: meter.id, deed: 'change', by: 'The office', way: 'screen' };
    const ofThing = await office.send('query($id: ID!) { changes(thingId: $id) { thing thingId deed before after by way } }', {
      id: meter.id,
    });
    expect(ofThing.data.changes).toEqual([
      { ...change, before: { name: 'Street meter' }, after: { name: 'Meter at the street' } },
      { ...change, before: { name: 'Street' }, after: { name: 'Street meter' } },
    ]);
    const ofProperty = await one(office, ours.id, 'changes(first: 1) { thing thingId deed after by way }');
    expect(ofProperty.data.property.changes).toEqual([{ ...change, after: { name: 'Meter at the street' } }]);
  });

  it("is a crew's for its own properties, and never a client's", async () => {
    const [ourMeter, theirMeter] = [await aMeter(product.database, ours), await aMeter(product.database, theirs)];
    for (const meter of [ourMeter, theirMeter]) await rename(office, meter, `Renamed ${meter.id}`, 1);
    const seen = async (who: Somebody, meter: Built): Promise<number> =>
      (await who.send('query($id: ID!) { changes(thingId: $id) { id } }', { id: meter.id })).data.changes.length;
    expect([await seen(technician, ourMeter), await seen(technician, theirMeter)]).toEqual([1, 0]);
    expect(await seen(resident, ourMeter)).toBe(0);
    expect(await seen(office, theirMeter)).toBe(1);
  });
});
