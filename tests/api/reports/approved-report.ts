import { expect } from 'vitest';
import { insertRow } from '../../support/builders.js';
import type { TestApp } from '../../support/test-app.js';
import type { FieldDay } from '../fieldwork/field-day.js';
import { anAccountedProperty } from './accounted-property.js';

/** A client with addresses and an accounted property, and an approved report of June 2026. */
export async function approvedReport(
  product: TestApp,
  day: FieldDay,
  emails: readonly string[],
  columns: object = {},
): Promise<{ id: string; clientId: string }> {
  const client = await insertRow(product.database, 'client', {
    organization_id: day.organizationId,
    name: `Client ${emails[0]} ${Math.random()}`,
    emails,
    ...columns,
  });
  await anAccountedProperty(product.database, day.organizationId, { client_id: client.id }, { months: 30, seed: 3 });
  const { data } = await day.office.send(
    'mutation($input: WaterReportInput!) { createWaterReport(input: $input) { ... on WaterReport { id version } } }',
    { input: { clientId: client.id, fromOn: '2026-06-01', untilOn: '2026-06-30' } },
  );
  const { id, version } = data.createWaterReport;
  const answer = await day.office.send(
    'mutation($id: ID!, $version: Int!) { approveReport(id: $id, version: $version) { ... on WaterReport { state } } }',
    { id, version },
  );
  expect(answer.data.approveReport).toEqual({ state: 'approved' });
  return { id, clientId: client.id };
}
