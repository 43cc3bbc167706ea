import { afterAll, beforeAll, expect, it } from 'vitest';
import { type TestApp, startApp } from '../../support/test-app.js';
import { type FieldDay, codeOf, fieldDay } from './field-day.js';

let product: TestApp;
let day: FieldDay;

beforeAll(async () => {
  product = await startApp();
  day = await fieldDay(product);
});
afterAll(() => product.close());

const CREW =
  '__typename ... on Crew { id version name members { id person { name } } } ... on NameTaken { name } ... on StillInUse { by count } ... on ChangedMeanwhile { version }';
const create = (input: Record<string, unknown>) =>
  day.office.send(`mutation($input: CrewInput!) { createCrew(input: $input) { ${CREW} } }`, { input });
const change = (id: string, version: number, input: Record<string, unknown>) =>
  day.office.send(
    `mutation($id: ID!, $version: Int!, $input: CrewInput!) { changeCrew(id: $id, version: $version, input: $input) { ${CREW} } }`,
    { id, version, input },
  );
const retire = (id: string, version: number) =>
  day.office.send(`mutation($id: ID!, $version: Int!) { retireCrew(id: $id, version: $version) { ${CREW} } }`, { id, version });

it('keeps a crew with its members; members left out stay, and who goes with it can change', async () => {
  const made = (await create({ name: 'West', memberIds: [day.technician.memberId] })).data.createCrew;
  expect(made).toMatchObject({ name: 'West', version: 1, members: [{ id: day.technician.memberId, person: { name: 'The technician' } }] });
  expect((await create({ name: 'West' })).data.createCrew).toEqual({ __typename: 'NameTaken', name: 'West' });
  expect((await change(made.id, 1, { name: 'Far west' })).data.changeCrew).toMatchObject({
    version: 2,
    name: 'Far west',
    members: [{ id: day.technician.memberId }],
  });
  expect((await change(made.id, 2, { name: 'Far west', memberIds: [day.lead.memberId] })).data.changeCrew.members).toMatchObject([
    { id: day.lead.memberId },
  ]);
  expect((await change(made.id, 1, { name: 'West' })).data.changeCrew.__typename).toBe('ChangedMeanwhile');
});

it('refuses members of another organization and clients', async () => {
  const client = await product.somebody(day.organizationId, 'client', day.clientId);
  const foreign = await product.somebody(await product.organization(), 'technician');
  for (const { memberId } of [client, foreign]) {
    expect((await create({ name: 'East', memberIds: [memberId] })).errors[0]!.extensions).toMatchObject({
      code: 'VALUE_REFUSED',
      details: { field: 'memberIds', found: memberId },
    });
  }
});

it('does not retire a crew that has work, and then takes it off the list', async () => {
  const { id } = (await create({ name: 'South' })).data.createCrew;
  const order = await day.order({ propertyId: (await day.property()).id });
  const assign = (crewId: string | null, version: number) =>
    day.office.send(
      'mutation($id: ID!, $version: Int!, $crew: ID) { assignWorkOrder(id: $id, version: $version, crewId: $crew, day: "2026-07-06") { ... on WorkOrder { version } } }',
      { id: order.id, version, crew: crewId },
    );
  const { version } = (await assign(id, 1)).data.assignWorkOrder;
  expect((await retire(id, 1)).data.retireCrew).toEqual({ __typename: 'StillInUse', by: 'work order', count: 1 });
  const open = (await assign(null, version)).data.assignWorkOrder;
  expect((await retire(id, 1)).data.retireCrew.__typename).toBe('Crew');
  expect((await day.office.send('{ crews { name } }')).data.crews.map(({ name }: { name: string }) => name)).not.toContain('South');
  expect(codeOf(await assign(id, open.version))).toBe('NOT_FOUND');
});

it('shows a lead their own crews, and lets only the office keep them', async () => {
  expect((await day.lead.send('{ crews { id } }')).data.crews).toContainEqual({ id: day.crewId });
  expect((await day.lead.send('{ crews { id } }')).data.crews).not.toContainEqual({ id: day.otherCrewId });
  expect(codeOf(await day.lead.send('mutation { createCrew(input: { name: "Mine" }) { __typename } }'))).toBe('NOT_ALLOWED');
});
