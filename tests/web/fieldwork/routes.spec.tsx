import { cleanup, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { RoutesPage } from '../../../apps/web/src/features/fieldwork/routes/RoutesPage.js';
import { builtCrew, builtProperty, builtWorkOrder } from '../support/built.js';
import { drawPage, viewerOf } from '../support/draw-page.js';
import { builtStop } from './built-stop.js';

afterEach(cleanup);

const crews = [builtCrew('crew-1', 'Crew 1'), builtCrew('crew-2', 'Crew 2')];
const open = builtWorkOrder('w8', 'inspect', { what: 'Walk the main line', estimateMinutes: 30 });
const waiting = builtWorkOrder('w9', 'repair', { state: 'waiting for approval', what: 'Replace the valve', cost: 1024, notToExceed: 900 });

const page = (answers: Readonly<Record<string, unknown>> = {}, viewer = viewerOf()) =>
  drawPage(<RoutesPage />, {
    at: '/routes',
    route: '/routes',
    viewer,
    answers: {
      routes: [builtStop()['route']],
      crews,
      workOrders: ({ state }: { state: string[] }) => (state[0] === 'open' ? [open] : [waiting]),
      properties: [builtProperty('p1', 'Quail Commons')],
      ...answers,
    },
  });

const variables = (calls: readonly { name: string; variables: object }[], name: string) =>
  calls.find((call) => call.name === name)?.variables;

describe('routes', () => {
  it('lists each crew’s day, what nobody has, and what waits for approval', async () => {
    page();
    expect((await screen.findByRole('heading', { level: 1 })).textContent).toBe(
      '2 stops on this day; one order waits for a crew, one for approval',
    );
    expect(screen.getByRole('heading', { name: 'Crew 1, 2 stops' })).toBeTruthy();
    expect(screen.getByText('Crew 2 has nothing on this day.')).toBeTruthy();
    expect(
      within(screen.getByRole('table', { name: 'One order that nobody has yet' })).getByText('Inspect: Walk the main line'),
    ).toBeTruthy();
    const cost = within(screen.getByRole('table', { name: 'One order waits for approval' })).getAllByRole('row')[1];
    expect(cost?.textContent).toContain('$1,024');
    expect(cost?.textContent).toContain('$900');
  });

  it('moves a stop with a press, to the place of its neighbour', async () => {
    const { user, calls } = page({ moveStop: builtStop()['route'] });
    await user.click(await screen.findByRole('button', { name: 'Old Mill Shops earlier' }));
    await waitFor(() => expect(variables(calls, 'MoveStop')).toEqual({ id: 'st2', version: 1, position: 1 }));
    expect(screen.queryByRole('button', { name: 'Old Mill Shops later' })).toBeNull();
  });

  it('gives an order to a crew and a day; the dialog stands in the address', async () => {
    const { user, calls, address } = page({ assignWorkOrder: { __typename: 'WorkOrder', ...open, state: 'given out' } });
    await user.click(await screen.findByRole('button', { name: 'Give out: Inspect: Walk the main line, Quail Commons' }));
    expect(address()).toBe('/routes?order=w8');
    await user.click(screen.getByRole('radio', { name: 'Crew 2' }));
    await user.click(within(screen.getByRole('dialog')).getByRole('button', { name: 'Give out' }));
    await waitFor(() =>
      expect(variables(calls, 'GiveOutWorkOrder')).toEqual({ id: 'w8', version: 1, crewId: 'crew-2', day: '2026-09-24' }),
    );
    expect(await screen.findByText('Given to Crew 2, Thursday 24 September.')).toBeTruthy();
    expect(address()).toBe('/routes');
  });

  it('takes an order back', async () => {
    const { user, calls } = page({ assignWorkOrder: { __typename: 'WorkOrder', ...open } });
    await user.click(await screen.findByRole('button', { name: /take back: Adjust/ }));
    await user.click(screen.getByRole('radio', { name: 'nobody yet' }));
    await user.click(screen.getByRole('button', { name: 'Take it back' }));
    await waitFor(() => expect(variables(calls, 'GiveOutWorkOrder')).toEqual({ id: 'w1', version: 1, crewId: null, day: null }));
  });

  it('approves, unless somebody was there first', async () => {
    const changed = { __typename: 'ChangedMeanwhile', id: 'w9', version: 2, changedBy: 'Ana', changedAt: '2026-09-24T16:10:00Z' };
    const { user } = page({ approveWorkOrder: changed });
    await user.click(await screen.findByRole('button', { name: 'Approve: Repair: Replace the valve, Quail Commons' }));
    expect((await screen.findByRole('alert')).textContent).toContain('Changed by Ana at 9:10 am');
  });

  it('shows no way to approve to those who may not', async () => {
    page({}, viewerOf({ role: 'crewLead', permissions: ['assign work', 'read routes'] }));
    await screen.findByRole('table', { name: 'One order waits for approval' });
    expect(screen.queryByRole('button', { name: /^Approve/ })).toBeNull();
  });

  it('makes a work order; one above the limit says that it waits', async () => {
    const needed = { __typename: 'ApprovalNeeded', cost: 1200, notToExceed: 900, workOrder: waiting };
    const { user, calls } = page({ createWorkOrder: needed });
    await user.click(await screen.findByRole('button', { name: 'New work order' }));
    await user.click(screen.getByRole('button', { name: 'Make the order' }));
    expect(screen.getByRole('alert').textContent).toContain('Choose the property');
    await user.selectOptions(screen.getByLabelText('Property'), 'Quail Commons');
    await user.click(screen.getByRole('radio', { name: 'repair' }));
    await user.type(screen.getByLabelText(/Hours of labour/), '8');
    await user.type(screen.getByLabelText(/Price of an hour/), '150');
    await user.click(screen.getByRole('button', { name: 'Make the order' }));
    await waitFor(() => expect(screen.getByRole('alert').textContent).toContain('it costs $1,200, and $900 may be spent'));
    expect(variables(calls, 'CreateWorkOrder')).toEqual({
      input: { propertyId: 'p1', kind: 'repair', what: null, estimateMinutes: null, labourHours: 8, labourRate: 150 },
    });
  });
});
