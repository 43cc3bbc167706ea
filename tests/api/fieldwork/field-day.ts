import { aCrew, aProperty, type Built, insertRow } from '../../support/builders.js';
import type { Answer, Somebody, TestApp } from '../../support/test-app.js';

/** One organization with two crews and everybody who may ask. */
export interface FieldDay {
  readonly product: TestApp;
  readonly organizationId: string;
  readonly owner: Somebody;
  readonly office: Somebody;
  readonly lead: Somebody;
  readonly technician: Somebody;
  /** the lead of the other crew */
  readonly stranger: Somebody;
  readonly crewId: string;
  readonly otherCrewId: string;
  /** a client that lets 250 be spent without asking */
  readonly clientId: string;
  property(columns?: Record<string, unknown>): Promise<Built>;
  finding(propertyId: string, columns?: Record<string, unknown>): Promise<Built>;
  /** a work order made by the office */
  order(input: Record<string, unknown>): Promise<Order>;
  /** a work order given to the first crew for a day */
  given(input: Record<string, unknown>, day: string): Promise<Order>;
}

/** The fields that every outcome of these tests shows. */
export interface Order {
  readonly __typename: string;
  readonly id: string;
  readonly version: number;
  readonly state: string;
  readonly stopId: string | null;
}

export const ORDER = `__typename
  ... on WorkOrder { id version state kind what cost notToExceed estimateMinutes stopId day doneNote leftNote doneAt crew { id name } finding { id state } parts { name count price } }
  ... on ChangedMeanwhile { id version changedBy }
  ... on ApprovalNeeded { needed: cost limit: notToExceed workOrder { id version state } }`;

const CREATE = `mutation($input: WorkOrderInput!) { createWorkOrder(input: $input) { ${ORDER} } }`;
const ASSIGN = `mutation($id: ID!, $version: Int!, $crewId: ID, $day: Date) { assignWorkOrder(id: $id, version: $version, crewId: $crewId, day: $day) { ${ORDER} } }`;
const CLOSE = `mutation($input: CloseOrderInput!) { closeWorkOrder(input: $input) { ${ORDER} } }`;

export const create = (who: Somebody, input: Record<string, unknown>): Promise<Answer> => who.send(CREATE, { input });
export const assign = (who: Somebody, order: { id: string; version: number }, crewId: string | null, day: string | null): Promise<Answer> =>
  who.send(ASSIGN, { id: order.id, version: order.version, crewId, day });
export const close = (who: Somebody, order: { id: string; version: number }, input: Record<string, unknown>): Promise<Answer> =>
  who.send(CLOSE, { input: { id: order.id, version: order.version, ...input } });

export const codeOf = (answer: Answer): string | undefined => answer.errors[0]?.extensions.code;

/** Does something while the organization's clock stands at a day: work is given only to days that are not over. */
export async function onDay<T>(database: TestApp['database'], organizationId: string, day: string, work: () => Promise<T>): Promise<T> {
  const stand = (at: unknown) => database.admin('update organization set stands_still_on = $2 where id = $1', [organizationId, at]);
  const [before] = await database.admin<{ at: string | null }>('select stands_still_on::text as at from organization where id = $1', [
    organizationId,
  ]);
  await stand(day);
  try {
    return await work();
  } finally {
    await stand(before!.at);
  }
}

/** A Monday. Before it nothing is given out but by `given`. */
const STANDS_STILL_ON = '2026-07-06';

export async function fieldDay(product: TestApp, standsStillOn: string | null = STANDS_STILL_ON): Promise<FieldDay> {
  const { database } = product;
  const organizationId = await product.organization();
  await database.admin('update organization set stands_still_on = $2 where id = $1', [organizationId, standsStillOn]);
  const as = (role: 'owner' | 'office' | 'crewLead' | 'technician') => product.somebody(organizationId, role);
  const owner = await as('owner');
  const office = await as('office');
  const lead = await as('crewLead');
  const technician = await as('technician');
  const stranger = await as('crewLead');
  const crew = await aCrew(database, organizationId);
  const otherCrew = await aCrew(database, organizationId);
  const client = await insertRow(database, 'client', { organization_id: organizationId, name: 'Quail Commons HOA', not_to_exceed: 250 });
  for (const [crewId, member] of [
    [crew.id, lead],
    [crew.id, technician],
    [otherCrew.id, stranger],
  ] as const) {
    await insertRow(database, 'crew_member', { organization_id: organizationId, crew_id: crewId, member_id: member.memberId });
  }
  const order = async (input: Record<string, unknown>): Promise<Order> =>
    (await create(office, { kind: 'inspect', ...input })).data.createWorkOrder;
  return {
    product,
    organizationId,
    owner,
    office,
    lead,
    technician,
    stranger,
    crewId: crew.id,
    otherCrewId: otherCrew.id,
    clientId: client.id,
    property: (columns = {}) => aProperty(database, organizationId, { client_id: client.id, ...columns }),
    finding: (propertyId, columns = {}) =>
      insertRow(database, 'finding', {
        organization_id: organizationId,
        property_id: propertyId,
        kind: 'unexplained use',
        cause_key: `cause ${Math.random()}`,
        says: { code: 'unexplained-use', details: {} },
        opened_at: '2026-07-01T12:00:00Z',
        ...columns,
      }),
    order,
    given: async (input, day) => {
      const made = await order(input);
      return onDay(database, organizationId, day, async () => (await assign(office, made, crew.id, day)).data.assignWorkOrder);
    },
  };
}
