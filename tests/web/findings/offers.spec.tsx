import { cleanup, screen, waitFor, within } from '@testing-library/react';
import { afterEach, expect, it } from 'vitest';
import { builtWorkOrder, gallons } from '../support/built.js';
import { article, dear, last, page } from './drawn-findings.js';

afterEach(cleanup);

const programs = (adjustPercent: number, minutes = 40) => [
  { name: 'A', days: 'Tue Sat', starts: ['21:30'], adjustPercent, stations: [{ station: 3, minutes, cycles: 1, soakMinutes: 0 }] },
];
const offer = (kind: string, keyPresses: number, unmet: number, offered = programs(72)) => ({
  kind,
  programs: offered,
  result: { keyPresses, unmetLitres: gallons(unmet), wastedLitres: gallons(300) },
});
const plan = { month: '2026-09', reason: null, leastChange: offer('percent', 1, 900), full: offer('full', 11, 40, programs(100, 29)) };
const present = { id: 's1', state: 'on', programs: programs(100) };
const controller = (given: object = {}) => ({ id: 'c1', name: 'North', presentSettings: present, plan, ...given });
const accepted = {
  __typename: 'FindingAccepted',
  finding: { ...dear, state: 'in work', version: 2 },
  workOrder: builtWorkOrder('w1', 'adjust'),
};

async function opened(answer: unknown, language: 'en' | 'es' = 'en') {
  const drawn = page({ at: '/findings/f1', language, more: { acceptFinding: accepted, controller: answer } });
  await article();
  await drawn.user.keyboard('a');
  return { ...drawn, dialog: within(screen.getByRole('dialog')) };
}
const sent = async ({ user, dialog, calls }: Awaited<ReturnType<typeof opened>>) => {
  await user.click(dialog.getByRole('button', { name: 'Make the work order' }));
  await waitFor(() => expect(last(calls, 'AcceptFinding')).toBeDefined());
  return (last(calls, 'AcceptFinding') as { input: { settings: unknown } }).input.settings;
};

it('offers the least change first, with what each offer enters and leaves, and gives the full program in one tap', async () => {
  const drawn = await opened(controller());
  const least = await drawn.dialog.findByRole('radio', { name: /^Least change: the percent/ });
  expect(least).toHaveProperty('checked', true);
  expect(least.closest('label')?.textContent).toMatch(/72%.*100%.*One key press; in the month it leaves 900 gal unmet and wastes 300 gal/);
  await drawn.user.click(drawn.dialog.getByRole('radio', { name: /^Full program.*11 key presses/ }));
  expect(await sent(drawn)).toEqual({ offer: 'full program', month: '2026-09' });
});

it('gives the least change where nobody has chosen, for the month of the day on which the crew comes', async () => {
  const drawn = await opened(({ id }: { id: string }) => ({ ...controller(), id }));
  await drawn.dialog.findByRole('radio', { name: /^Least change/ });
  await drawn.user.type(drawn.dialog.getByLabelText(/^Day/), '2026-10-02');
  await waitFor(() => expect(last(drawn.calls, 'OffersToEnter')).toEqual({ id: 'c1', month: '2026-10' }));
  await drawn.user.clear(drawn.dialog.getByLabelText(/^Day/));
  expect(await sent(drawn)).toEqual({ offer: 'least change', month: '2026-09' });
});

it('asks for nothing of other work', async () => {
  const drawn = await opened(controller());
  await drawn.dialog.findByRole('radio', { name: /^Least change/ });
  await drawn.user.click(drawn.dialog.getByRole('radio', { name: 'Inspect' }));
  expect(drawn.dialog.queryByRole('radio', { name: /^Least change/ })).toBeNull();
  expect(await sent(drawn)).toBeNull();
});

it('says that only the full program keeps all, and enters nothing where nobody knows what is set', async () => {
  const only = await opened(controller({ plan: { ...plan, leastChange: null } }));
  expect(await only.dialog.findByText(/No percent, days or start times keep every rule/)).toBeTruthy();
  expect(only.dialog.getByRole('radio', { name: /^Full program/ })).toHaveProperty('checked', true);
  cleanup();
  const blank = await opened(controller({ presentSettings: null, plan: { ...plan, leastChange: null } }));
  expect(await blank.dialog.findByRole('radio', { name: /^Nothing yet: read it first/ })).toHaveProperty('checked', true);
  expect(blank.dialog.getByRole('radio', { name: /^Full program.*One program, in place of whatever is set/ })).toBeTruthy();
  expect(await sent(blank)).toEqual({ offer: 'least change', month: '2026-09' });
});

it('says why nothing can be planned', async () => {
  const none = { month: '2026-09', reason: { code: 'NO_WEATHER', details: {} }, leastChange: null, full: null };
  const { dialog } = await opened(controller({ plan: none }));
  expect((await dialog.findByText(/No settings can be planned/)).textContent).toMatch(/No weather is known.*the latest account/);
  cleanup();
  const spanish = await opened(controller(), 'es');
  expect(await spanish.dialog.findByRole('radio', { name: /Una pulsación; en el mes deja/ })).toHaveProperty('checked', true);
});
