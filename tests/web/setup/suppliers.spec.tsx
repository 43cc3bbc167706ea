import { cleanup, screen, within } from '@testing-library/react';
import { afterEach, expect, it } from 'vitest';
import { SetupPage } from '../../../apps/web/src/features/setup/frame/SetupPage.js';
import { drawPage } from '../support/draw-page.js';
import { ownerOf } from './owner.js';

afterEach(cleanup);

const kept = { version: 1, retiredAt: null, supplierId: 's1' };
const nothing = {
  allowedDays: null,
  daysPerWeek: null,
  addressParity: null,
  blockedFrom: null,
  blockedUntil: null,
  maxMinutes: null,
  hoursAfterRain: null,
  rainMm: null,
  plants: null,
  exemptMethods: null,
  water: null,
  effectiveFrom: null,
  effectiveUntil: null,
};
const rule = (id: string, name: string, holds: object) => ({ __typename: 'WateringRule', id, name, ...kept, ...nothing, ...holds });
const tier = (id: string, holds: object) => ({
  __typename: 'RateTier',
  id,
  ...kept,
  effectiveFrom: '2026-07-01',
  fixed: null,
  tier: 1,
  unit: 'CCF',
  price: 4.12,
  ...holds,
});
const supplier = {
  __typename: 'WaterSupplier',
  id: 's1',
  version: 1,
  retiredAt: null,
  name: 'Brook Water',
  rules: [
    rule('r1', 'By night', { blockedFrom: '10:00', blockedUntil: '20:00', water: 'potable' }),
    rule('r2', 'Decorative lawns', { allowedDays: 'none', plants: 'turf cool-season, turf warm-season' }),
    rule('r3', 'Odd', { allowedDays: 'Mon Wed', addressParity: 'odd', daysPerWeek: 2 }),
  ],
  rateTiers: [tier('t1', { upTo: 1.5, upToIs: 'share of allowance' }), tier('t2', { upTo: 40, upToIs: 'volume' })],
};
const row = (name: string, at = 0) => within(screen.getAllByText(name)[at]!.closest('tr') as HTMLElement);

it('says what each rule holds back and up to what a tier goes, in the words of a person', async () => {
  drawPage(<SetupPage />, {
    answers: { waterSuppliers: [supplier] },
    at: '/setup/suppliers',
    route: '/setup/*',
    viewer: ownerOf(),
  });
  await screen.findByRole('heading', { name: '3 watering rules' });
  expect(row('By night').getByText('Brook Water: not from 10:00 am to 8:00 pm; potable water')).toBeTruthy();
  expect(row('Decorative lawns').getByText('Brook Water: must not be watered; cool-season turf and warm-season turf')).toBeTruthy();
  expect(row('Odd').getByText('Brook Water: on Mon Wed only; 2 days a week; odd addresses')).toBeTruthy();
  expect(row('Tier 1: $4.12 a CCF').getByText(/up to 150% of what is allowed$/)).toBeTruthy();
  expect(row('Tier 1: $4.12 a CCF', 1).getByText(/up to 40 CCF$/)).toBeTruthy();
});
