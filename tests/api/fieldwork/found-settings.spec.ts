import { randomUUID } from 'node:crypto';
import { changeFromFound, GROUND_FORM, type PlanGround } from '@rillbook/irrigation/at-the-controller/change-from-found.js';
import { programInWords } from '@rillbook/irrigation/at-the-controller/program-in-words.js';
import type { Program } from '@rillbook/irrigation/settings/settings-fact.js';
import { afterAll, beforeAll, expect, it } from 'vitest';
import {
  aController,
  aWaterSupplier,
  aWateringRule,
  aWeatherDay,
  aWeatherStation,
  aZone,
  type Built,
  someSettings,
} from '../../support/builders.js';
import { type Somebody, type TestApp, startApp } from '../../support/test-app.js';
import { type FieldDay, fieldDay } from './field-day.js';

let product: TestApp;
let day: FieldDay;
let property: Built;
let controller: Built;
let bare: Built;

const NOW = '2026-07-06';
/** Midnight there: whenever this runs, it does not lie ahead. */
const DAY_BEGINS = `${NOW}T07:00:00Z`;

beforeAll(async () => {
  product = await startApp();
  day = await fieldDay(product);
  const { database } = product;
  await database.admin(`update organization set stands_still_on = '${NOW}' where id = $1`, [day.organizationId]);
  const supplier = await aWaterSupplier(database, day.organizationId);
  await aWateringRule(database, supplier, { name: 'Stage 1', days_per_week: 3 });
  const station = await aWeatherStation(database, day.organizationId);
  for (let back = 0; back < 120; back += 1) {
    const date = new Date(Date.UTC(2025, 6, 31 - back)).toISOString().slice(0, 10);
    await aWeatherDay(database, station, { day: date, tmax_c: 30 + (back % 5), tmin_c: 13 + (back % 3) });
  }
  property = await day.property({ water_supplier_id: supplier.id, weather_station_id: station.id, address: '12 Elm Street' });
  await day.given({ propertyId: property.id }, NOW);
  controller = await aController(database, property, { adjust_scope: 'program', minute_step: 1, cycle_soak: true });
  const zone = { controller_id: controller.id, soil: 'loam', slope_percent: 2 };
  await aZone(database, property, { ...zone, station: 1, precip_mm_per_h: 40 });
  await aZone(database, property, { ...zone, station: 2, plants: 'shrubs', method: 'drip', precip_mm_per_h: 15 });
  bare = await aController(database, property);
  await someSettings(database, controller, { effective_at: '2026-05-20T12:00:00Z', programs: [programInWords(program('A', 1, 20))] });
});
afterAll(() => product.close());

const program = (name: string, station: number, minutes: number, adjustPercent = 100): Program => ({
  name,
  days: { kind: 'weekdays', weekdays: ['Mon', 'Wed', 'Fri'] },
  starts: [120 + 240 * (station - 1)],
  adjustPercent,
  stations: [{ station, minutes, cycles: 1, soakMinutes: 0 }],
});

const GROUND = 'query($id: ID!) { property(id: $id) { controllers { id planGround { month gatheredAt form ground reason { code } } } } }';
const PLAN =
  'query($id: ID!) { property(id: $id) { controllers { id plan { leastChange { kind programs { name days starts adjustPercent stations { station minutes cycles soakMinutes } } result { usedLitres neededLitres unmetLitres wastedLitres keyPresses } } } } } }';

const groundOf = async (who: Somebody, of: Built) =>
  (await who.send(GROUND, { id: property.id })).data.property.controllers.find(({ id }: { id: string }) => id === of.id).planGround;
const leastChangeAtOffice = async () =>
  (await day.office.send(PLAN, { id: property.id })).data.property.controllers.find(({ id }: { id: string }) => id === controller.id).plan
    .leastChange;

const sendFound = (programs: readonly Program[]) =>
  day.lead.send(
    'mutation($device: DeviceInput!, $operations: [OperationInput!]!) { sendFieldwork(device: $device, operations: $operations) { verdict problem { message } } }',
    {
      device: { id: randomUUID(), waiting: 0, photosWaiting: 0, refused: 0 },
      operations: [
        {
          key: randomUUID(),
          seq: 1,
          kind: 'settings',
          payloadVersion: 1,
          savedAt: DAY_BEGINS,
          body: JSON.stringify({
            controllerId: controller.id,
            effectiveAt: DAY_BEGINS,
            record: 'found',
            state: 'on',
            programs: programs.map(programInWords),
          }),
        },
      ],
    },
  );

it('carries to the crew what a plan asks for: the month, needs, rules, hours, and no more of the controller than it holds', async () => {
  const carried = await groundOf(day.lead, controller);
  expect(carried).toMatchObject({ month: '2026-07', form: GROUND_FORM, reason: null });
  expect(carried.gatheredAt).toMatch(/^2026-07-0[67]T/);
  // The form is raised when this list changes: a phone must not plan on what it does not understand.
  expect(Object.keys(carried.ground).sort()).toEqual([
    'flowLimitLPerMin',
    'month',
    'place',
    'rules',
    'traits',
    'weights',
    'window',
    'zones',
  ]);
  expect(Object.keys(carried.ground.zones[0]).sort()).toEqual([
    'fillMinutes',
    'flowLPerMin',
    'intake',
    'method',
    'needLitresPerDay',
    'plants',
    'station',
    'storageDays',
    'zoneId',
  ]);
  expect(Object.keys(carried.ground.traits)).toHaveLength(13);
  expect(carried.ground.rules).toMatchObject([{ name: 'Stage 1', daysPerWeek: 3 }]);
  expect(await groundOf(day.lead, bare)).toMatchObject({ ground: null, reason: { code: 'NO_ZONES' } });
});

it('is not carried to a client', async () => {
  const client = await product.somebody(day.organizationId, 'client', day.clientId);
  expect(await groundOf(client, controller)).toBeNull();
});

it('judges what was found, when it arrives, as the phone judged it without signal: the same programs and the same litres', async () => {
  const ground = (await groundOf(day.lead, controller)).ground as PlanGround;
  const before = await leastChangeAtOffice();
  // As it was found, much more than the programs on record.
  const found = [program('A', 1, 45, 130), program('B', 2, 90)];
  const here = changeFromFound(ground, found);
  if (here.kind !== 'enter') throw new Error(`nothing to enter: ${here.kind}`);
  expect((await sendFound(found)).data.sendFieldwork).toEqual([{ verdict: 'applied', problem: null }]);
  const there = await leastChangeAtOffice();
  expect(there.kind).toBe(here.offer.kind);
  expect(there.programs).toEqual(here.offer.programs.map(programInWords));
  const { usedLitres, neededLitres, unmetLitres, wastedLitres, keyPresses } = here.offer.judgement;
  expect(there.result).toEqual({ usedLitres, neededLitres, unmetLitres, wastedLitres, keyPresses });
  // It is what was found that decides, and something is to be turned.
  expect(there.programs).not.toEqual(before.programs);
  expect(here.offer.kind).not.toBe('as set');
});

it('says nothing of stations that nobody knows', async () => {
  const ground = (await groundOf(day.lead, controller)).ground as PlanGround;
  expect(changeFromFound(ground, [program('A', 1, 20), program('C', 7, 5)])).toEqual({ kind: 'stations without zone', stations: [7] });
});
