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
import { type TestApp, startApp } from '../../support/test-app.js';
import { type FieldDay, fieldDay } from '../fieldwork/field-day.js';

let product: TestApp;
let day: FieldDay;
let supplier: Built;
let stageOne: Built;
let property: Built;
let controller: Built;

const DAYS = 390;
const FROSTS = ['2024-11-20', '2025-01-10'];
const RULE = () => ({ supplierId: supplier.id, name: 'Stage 2: two days a week', daysPerWeek: 2, effectiveFrom: '2026-07-01' });

beforeAll(async () => {
  product = await startApp();
  day = await fieldDay(product);
  await product.database.admin(`update organization set stands_still_on = '2026-07-06' where id = $1`, [day.organizationId]);
  supplier = await aWaterSupplier(product.database, day.organizationId);
  stageOne = await aWateringRule(product.database, supplier, { name: 'Stage 1', days_per_week: 5 });
  const station = await aWeatherStation(product.database, day.organizationId);
  // A dry year until the end of July of last year.
  for (let back = 0; back < DAYS; back += 1) {
    const date = new Date(Date.UTC(2025, 6, 31 - back)).toISOString().slice(0, 10);
    const tmin = FROSTS.includes(date) ? -1 : 13 + (back % 3);
    await aWeatherDay(product.database, station, { day: date, tmax_c: 30 + (back % 5), tmin_c: tmin });
  }
  property = await day.property({ water_supplier_id: supplier.id, weather_station_id: station.id, address: '12 Elm Street' });
  controller = await aController(product.database, property, { adjust_scope: 'program', minute_step: 1, cycle_soak: true });
  const zone = { controller_id: controller.id, soil: 'loam', slope_percent: 2 };
  await aZone(product.database, property, { ...zone, station: 1, precip_mm_per_h: 40 });
  await aZone(product.database, property, { ...zone, station: 2, plants: 'shrubs', method: 'drip', precip_mm_per_h: 15 });
  await someSettings(product.database, controller, {
    effective_at: '2026-05-20T12:00:00Z',
    programs: [
      {
        name: 'A',
        days: 'Mon Wed Fri',
        starts: ['02:00'],
        adjustPercent: 100,
        stations: [
          { station: 1, minutes: 20, cycles: 1, soakMinutes: 0 },
          { station: 2, minutes: 40, cycles: 1, soakMinutes: 0 },
        ],
      },
    ],
  });
});
afterAll(() => product.close());

const OFFER =
  '{ kind programs { name days starts stations { station minutes cycles } } result { usedLitres neededLitres unmetLitres ranOffLitres keyPresses endsAt limits breaches { rule } zones { station unmetLitres } } }';
const PLAN = `query($id: ID!, $month: Month) { property(id: $id) { controllers { plan(month: $month) { month needMonths reason { code } present { unmetLitres breaches { rule } } leastChange ${OFFER} full ${OFFER} gapShare impossible { because } } } } }`;
const CARD =
  'query($id: ID!) { property(id: $id) { controllers { yearCard { reason { code } thirstiest shortStations programs { name adjustPercent } months { month isOff neededLitres usedLitres needMonths programs { name adjustPercent } } frost { months measuredDays } } } } }';
const CHANGE = `query($rule: WateringRuleInput!, $replaces: ID) { ruleChange(rule: $rule, replaces: $replaces) { month properties controllers { controllerId property { id } breaches { rule kind program times } plan { full ${OFFER} leastChange { kind } } } } }`;
const ORDER =
  'mutation($input: RuleChangeOrderInput!) { orderRuleChange(input: $input) { id state kind day controllerId plannedSettings { record state programs { days } } } }';

const planOf = async (who = day.office) => (await who.send(PLAN, { id: property.id, month: '2026-07' })).data.property.controllers[0].plan;

it('plans a controller from the same month of earlier years: two offers, replayed, with what each leaves', async () => {
  const plan = await planOf();
  expect(plan).toMatchObject({ month: '2026-07', needMonths: ['2025-07'], reason: null, impossible: [] });
  for (const offer of [plan.leastChange, plan.full]) expect(offer.result).toMatchObject({ limits: [], breaches: [], ranOffLitres: 0 });
  expect(plan.full.result.unmetLitres).toBeLessThan(0.02 * plan.full.result.neededLitres);
  expect(plan.gapShare).toBeLessThanOrEqual(0.01);
});

it("writes a year's card: the thirstiest month entered once, the others turned from it; frost as it was measured", async () => {
  const { data } = await day.office.send(CARD, { id: property.id });
  const { yearCard } = data.property.controllers[0];
  expect(yearCard).toMatchObject({ reason: null, shortStations: [], frost: { months: [11, 1], measuredDays: DAYS } });
  const months: {
    month: string;
    isOff: boolean;
    neededLitres: number;
    usedLitres: number;
    needMonths: string[];
    programs: { adjustPercent: number }[] | null;
  }[] = yearCard.months;
  expect(months.map(({ month }) => month)).toEqual([
    ...['07', '08', '09', '10', '11', '12'].map((month) => `2026-${month}`),
    ...['01', '02', '03', '04', '05', '06'].map((month) => `2027-${month}`),
  ]);
  // One of every month is on record whole.
  expect(months.map(({ needMonths }) => needMonths.join(' '))).toEqual([
    '2025-07',
    ...['2024-08', '2024-09', '2024-10', '2024-11', '2024-12'],
    ...['2025-01', '2025-02', '2025-03', '2025-04', '2025-05', '2025-06'],
  ]);
  const most = months.find(({ month }) => month === yearCard.thirstiest)!;
  const perDay = ({ month, neededLitres }: (typeof months)[number]) =>
    neededLitres / new Date(Date.UTC(+month.slice(0, 4), +month.slice(5), 0)).getUTCDate();
  expect(Math.max(...months.map(perDay))).toBeCloseTo(perDay(most), 6);
  const least = months.reduce((one, other) => (other.neededLitres < one.neededLitres ? other : one));
  const percents = (month: (typeof months)[number]) => (month.programs ?? []).map(({ adjustPercent }) => adjustPercent);
  expect(percents(most)).toEqual(yearCard.programs.map(() => 100));
  expect(least.isOff || Math.max(...percents(least)) < 100).toBe(true);
  const technician = await day.technician.send(CARD, { id: property.id });
  expect(technician.data.property?.controllers[0].yearCard ?? null).toBeNull();
});

it('says why there is no plan, and gives none to who does not read the portfolio', async () => {
  const other = await day.property();
  await aController(product.database, other);
  const answer = await day.office.send(PLAN, { id: other.id });
  expect(answer.data.property.controllers[0].plan).toMatchObject({ reason: { code: 'NO_ZONES' }, full: null });
});

it('shows what a new rule would change before it is brought in, and changes nothing', async () => {
  const { ruleChange } = (await day.office.send(CHANGE, { rule: RULE(), replaces: stageOne.id })).data;
  expect(ruleChange).toMatchObject({ month: '2026-07', properties: 1, controllers: [{ controllerId: controller.id }] });
  const [under] = ruleChange.controllers;
  expect(under.breaches).toMatchObject([{ rule: RULE().name, kind: 'too many days a week', program: 'A' }]);
  expect(under.plan.full.result).toMatchObject({ breaches: [], limits: [] });
  const days = new Set(under.plan.full.programs.flatMap((program: { days: string }) => program.days.split(' ')));
  expect(days.size).toBeLessThanOrEqual(2);
  expect((await planOf()).present.breaches).toEqual([]);
});

it('orders a month’s settings where that is worth the way, once, and not where it is not', async () => {
  const season = (who = day.office, propertyIds = [property.id]) =>
    who.send(
      'mutation($month: Month!, $ids: [ID!]!) { orderSeason(month: $month, propertyIds: $ids, what: " For July ") { id kind state what notBefore controllerId plannedSettings { record programs { name } } } }',
      { month: '2026-07', ids: propertyIds },
    );
  const [present] = [(await planOf()).present];
  expect(present.unmetLitres).toBeGreaterThan(0);
  await product.database.admin('update organization set least_litres = 1e9 where id = $1', [day.organizationId]);
  expect((await season()).data.orderSeason).toEqual([]);
  await product.database.admin('update organization set least_litres = 1 where id = $1', [day.organizationId]);
  const [order, ...more] = (await season()).data.orderSeason;
  expect(more).toEqual([]);
  expect(order).toMatchObject({ kind: 'adjust', state: 'open', what: 'For July', notBefore: '2026-06-28', controllerId: controller.id });
  expect(order.plannedSettings).toMatchObject({ record: 'planned' });
  // It is there to be done: no second one is made.
  expect((await season()).data.orderSeason).toEqual([]);
  expect((await season(day.lead)).errors[0]!.extensions.code).toBe('NOT_ALLOWED');
  expect((await season(day.office, Array<string>(11).fill(property.id))).errors[0]!.extensions.code).toBe('VALUE_REFUSED');
  await product.database.admin(`update work_order set state = 'dropped', left_note = 'Test' where id = $1`, [order.id]);
});

it('brings the rule in, ends the one before it, and orders the new settings once', async () => {
  const BRING =
    'mutation($rule: WateringRuleInput!, $replaces: ID) { bringInRule(rule: $rule, replaces: $replaces) { id name daysPerWeek } }';
  expect((await day.office.send(BRING, { rule: RULE(), replaces: stageOne.id })).data.bringInRule).toMatchObject({ daysPerWeek: 2 });
  const [ended] = await product.database.admin<{ until: string }>(
    'select effective_until::text as until from watering_rule where id = $1',
    [stageOne.id],
  );
  expect(ended).toEqual({ until: '2026-06-30' });
  expect((await planOf()).present.breaches).toMatchObject([{ rule: RULE().name }]);

  const sent = { input: { propertyIds: [property.id], month: '2026-07', what: 'Stage 2', crewId: day.crewId, day: '2026-07-07' } };
  const [order] = (await day.office.send(ORDER, sent)).data.orderRuleChange;
  expect(order).toMatchObject({ kind: 'adjust', state: 'given out', day: '2026-07-07', controllerId: controller.id });
  expect(order.plannedSettings).toMatchObject({ record: 'planned', state: 'on' });
  for (const { days } of order.plannedSettings.programs) expect(days.split(' ').length).toBeLessThanOrEqual(2);
  expect((await day.office.send(ORDER, sent)).data.orderRuleChange).toMatchObject([{ id: order.id }]);
});

it('keeps what the organization plans by, and refuses prices by which waste would cost more than thirst', async () => {
  const SET =
    'mutation($version: Int!, $input: PlanSettingInput!) { changePlanSetting(version: $version, input: $input) { version waterFrom thirst } }';
  const input = { waterFrom: '21:00', waterUntil: '05:00', thirst: 4, waste: 1, keyPress: 12, watering: 1 };
  const unsaid = await day.office.send('{ planSetting { version waterFrom } }');
  expect(unsaid.errors).toEqual([]);
  expect(unsaid.data.planSetting).toEqual({ version: 0, waterFrom: '22:00' });
  expect((await day.owner.send(SET, { version: 0, input })).data.changePlanSetting).toMatchObject({
    version: 1,
    waterFrom: '21:00',
    thirst: 4,
  });
  expect((await day.owner.send(SET, { version: 0, input })).errors[0]?.extensions.code).toBe('CHANGED_MEANWHILE');
  const dear = await day.owner.send(SET, { version: 1, input: { ...input, waste: 9 } });
  expect(dear.errors[0]?.message).toMatch(/thirst costs more than waste/);
});
