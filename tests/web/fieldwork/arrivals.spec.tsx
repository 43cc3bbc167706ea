import { cleanup, screen, waitFor } from '@testing-library/react';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { StopPage } from '../../../apps/web/src/features/fieldwork/stop/StopPage.js';
import { viewerOf } from '../support/draw-page.js';
import { drawAtPhone, freshPhone, sentOf } from './at-phone.js';
import { builtStop, builtVisit } from './built-stop.js';

beforeEach(freshPhone);
afterEach(cleanup);

const dell = viewerOf({ role: 'crewLead', permissions: ['read routes', 'record fieldwork'], crewIds: ['crew-1'] });

const page = ({ stop, step = '' }: { readonly stop: unknown; readonly step?: string }) =>
  drawAtPhone(<StopPage />, { at: `/today/st1${step}`, route: '/today/:stopId', viewer: dell, answers: { stop } });

const hasCome = async (user: ReturnType<typeof page>['user']) => {
  await user.click(await screen.findByRole('link', { name: 'Go to the meter' }));
  await screen.findByRole('heading', { name: 'Irrigation' });
};

it('takes an arrival by mistake back by its name, and comes anew', async () => {
  const first = page({ stop: builtStop() });
  await hasCome(first.user);
  await waitFor(() => expect(sentOf(first.calls, 'arrive')).toHaveLength(1));
  cleanup();
  const { user, calls } = page({ stop: builtStop() });
  await user.click(await screen.findByRole('button', { name: 'I am not here: take it back' }));
  await waitFor(() => expect(sentOf(calls, 'withdraw-visit')).toMatchObject([{ visitId: sentOf(first.calls, 'arrive')[0]?.key }]));
  expect(screen.queryByRole('button', { name: 'I am not here: take it back' })).toBeNull();
  await hasCome(user);
  await waitFor(() => expect(sentOf(calls, 'arrive')).toHaveLength(1));
});

it('comes to a visit that another phone began with the first thing that is done there', async () => {
  const { user, calls } = page({ stop: builtStop({ visit: builtVisit() }), step: '?step=zones' });
  await user.click(await screen.findByRole('button', { name: /^Leak/ }));
  await waitFor(() => expect(sentOf(calls, 'note-zone')).toHaveLength(1));
  expect(sentOf(calls, 'arrive')).toMatchObject([{ stopId: 'st1' }]);
  expect(sentOf(calls, 'note-zone')[0]).toMatchObject({ visitId: 'v1' });
});
