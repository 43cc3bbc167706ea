import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Built } from '../../support/builders.js';
import { type TestApp, startApp } from '../../support/test-app.js';
import { type FieldDay, codeOf, create, fieldDay } from './field-day.js';

let product: TestApp;
let day: FieldDay;
let property: Built;

beforeAll(async () => {
  product = await startApp();
  day = await fieldDay(product);
  property = await day.property();
});
afterAll(() => product.close());

const kept = () =>
  product.database.admin('select id from work_order where organization_id = $1 and property_id = $2', [day.organizationId, property.id]);

it('keeps an order once, however often and at once it is sent: under the name that it was given where it was typed', async () => {
  const input = { deviceRecordId: randomUUID(), propertyId: property.id, kind: 'inspect', what: 'Look at the valve box' };
  const answers = await Promise.all(Array.from({ length: 4 }, () => create(day.office, input)));
  expect(answers.map(({ data }) => data.createWorkOrder.id)).toEqual(Array(4).fill(input.deviceRecordId));
  expect((await create(day.office, input)).data.createWorkOrder).toMatchObject({ version: 1, what: input.what });
  expect(await kept()).toEqual([{ id: input.deviceRecordId }]);
});

it('takes no name that is none, and none that another order has', async () => {
  const input = { deviceRecordId: randomUUID(), propertyId: property.id, kind: 'read' };
  await create(day.office, input);
  const before = (await kept()).length;
  expect(codeOf(await create(day.office, { ...input, kind: 'repair' }))).toBe('VALUE_REFUSED');
  expect(codeOf(await create(day.office, { ...input, deviceRecordId: 'mine' }))).toBe('VALUE_REFUSED');
  expect(await kept()).toHaveLength(before);
});
