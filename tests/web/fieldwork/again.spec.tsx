import { cleanup, screen, waitFor } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { StopPage } from '../../../apps/web/src/features/fieldwork/stop/StopPage.js';
import { amountOf } from '../../../apps/web/src/features/fieldwork/stop/done/materials.js';
import { viewerOf } from '../support/draw-page.js';
import { drawAtPhone, freshPhone, sentOf } from './at-phone.js';
import { builtMeter, builtStop, builtVisit, NOW, property } from './built-stop.js';

// What is said again begins from what was said: nothing of it is lost for being changed.

beforeEach(freshPhone);
afterEach(cleanup);

const dell = viewerOf({ role: 'crewLead', permissions: ['read routes', 'record fieldwork'], crewIds: ['crew-1'] });

const page = (stop: unknown, step: string) =>
  drawAtPhone(<StopPage />, { at: `/today/st1?step=${step}`, route: '/today/:stopId', viewer: dell, answers: { stop } });

type User = ReturnType<typeof page>['user'];
const type = async (user: User, digits: string) => {
  for (const digit of digits) await user.click(screen.getByRole('button', { name: digit }));
};

describe('a stop that is closed again', () => {
  const closedAt = '2026-09-24T17:20:00Z';
  const visit = builtVisit({
    closedAt,
    doneNote: 'Set and tested',
    leftNote: 'Valve 3 drips',
    workedMinutes: 48,
    materials: [{ name: 'Nozzle', count: 3, unit: 'piece' }],
  });

  it('keeps all that was said, and when it was closed', async () => {
    const { user, calls } = page(builtStop({ visit, workOrders: [] }), 'done');
    await user.click(await screen.findByRole('button', { name: 'Change' }));
    await user.type(screen.getByLabelText(/What was done/), '!');
    await user.click(screen.getByRole('button', { name: 'Close the stop' }));
    await waitFor(() => expect(sentOf(calls, 'close-visit')).toHaveLength(1));
    expect(sentOf(calls, 'close-visit')[0]).toMatchObject({
      closedAt: new Date(closedAt).toISOString(),
      doneNote: 'Set and tested!',
      leftNote: 'Valve 3 drips',
      workedMinutes: 48,
      materials: [{ name: 'Nozzle', count: 3, unit: 'piece' }],
      // What stood on the screen: by it the server tells a correction from a word that knew nothing of it.
      over: {
        ...{ closedAt, doneNote: 'Set and tested', leftNote: 'Valve 3 drips', workedMinutes: 48 },
        materials: [{ name: 'Nozzle', count: 3, unit: 'piece' }],
      },
    });
    await user.click(await screen.findByRole('button', { name: 'Change' }));
    expect(screen.getByLabelText<HTMLInputElement>('Of what, line 1').value).toBe('Nozzle');
  });
});

describe('how many of a material', () => {
  it('asks again for what is no count, and takes none for it', async () => {
    const { user, calls } = page(builtStop({ visit: builtVisit(), workOrders: [] }), 'done');
    await user.click(await screen.findByRole('button', { name: 'Add a material' }));
    await user.type(screen.getByLabelText('Of what, line 1'), 'Pipe');
    await user.clear(screen.getByLabelText('How many, line 1'));
    await user.type(screen.getByLabelText('How many, line 1'), '1/2');
    await user.click(screen.getByRole('button', { name: 'Close the stop' }));
    expect((await screen.findByRole('alert')).textContent).toBe('Pipe: “1/2” is no count. Type how many in digits, such as 3 or 1.5.');
    expect(sentOf(calls, 'close-visit')).toEqual([]);
    await user.clear(screen.getByLabelText('How many, line 1'));
    await user.type(screen.getByLabelText('How many, line 1'), '0.5');
    await user.click(screen.getByRole('button', { name: 'Close the stop' }));
    await waitFor(() => expect(sentOf(calls, 'close-visit')[0]).toMatchObject({ materials: [{ name: 'Pipe', count: 0.5 }] }));
  });

  it('reads a thousand as a thousand, and a comma before one or two digits as the point of a Spanish phone', () => {
    expect(['1,000', '1,5', '12,25', '7.5', '', ' 3 '].map(amountOf)).toEqual([1000, 1.5, 12.25, 7.5, null, 3]);
    expect(['1/2', '-3', 'two', '1,0000', '1.5.2'].map(amountOf)).toEqual(Array(5).fill(undefined));
  });
});

describe('a meter that is read again', () => {
  it('is judged against the reading before, not against the one whose place it takes', async () => {
    const first = builtMeter().readings[0]!;
    let readings: readonly object[] = [first];
    const { user, calls } = page(
      () => builtStop({ visit: builtVisit(), property: { ...property, meters: [builtMeter({ readings })] } }),
      'meter',
    );
    await screen.findByRole('heading', { name: 'Irrigation' });
    await type(user, '18941');
    await user.click(screen.getByRole('button', { name: 'Save reading' }));
    await waitFor(() => expect(sentOf(calls, 'reading')).toHaveLength(1));
    // The server has it, and tells of it from now on.
    readings = [{ ...first, id: sentOf(calls, 'reading')[0]!.key, readAt: NOW, register: 18941 }, first];
    await screen.findByText(/All sent/);
    await user.click(screen.getByRole('button', { name: 'Read again' }));
    await waitFor(() => expect(screen.getByText(/18,715.9/)).toBeTruthy());
    await type(user, '18922');
    expect(await screen.findByText(/206.1 CCF since Tue 15 Sep/)).toBeTruthy();
    expect(screen.queryByText(/it is lower than/)).toBeNull();
    await user.click(screen.getByRole('button', { name: 'Save reading' }));
    await waitFor(() => expect(sentOf(calls, 'reading')).toHaveLength(2));
    expect(sentOf(calls, 'reading')[1]).toMatchObject({ register: 18922, replacesId: sentOf(calls, 'reading')[0]!.key });
  });
});
