import { cleanup, screen, waitFor } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { shelfName } from '../../../apps/web/src/features/fieldwork/device/use-shelved.js';
import { TodayPage } from '../../../apps/web/src/features/fieldwork/today/TodayPage.js';
import { todayDocument } from '../../../apps/web/src/features/fieldwork/today/today-document.js';
import { Phone } from '../../../apps/web/src/offline/phone.js';
import { storeName } from '../../../apps/web/src/offline/store.js';
import { builtCrew } from '../support/built.js';
import { viewerOf } from '../support/draw-page.js';
import { refusal } from '../support/fake-server.js';
import { drawAtPhone, freshPhone } from './at-phone.js';
import { builtStop, me, NOW } from './built-stop.js';

beforeEach(freshPhone);
afterEach(cleanup);

const lead = viewerOf({ role: 'crewLead', permissions: ['read routes', 'record fieldwork'], crewIds: ['crew-1'] });
const DAY_MS = 86_400_000;
const crews = [builtCrew('crew-1', 'Crew 1')];

const down = () => {
  throw refusal('UNFORESEEN', 'The server was restarted.');
};

const page = (answers: Readonly<Record<string, unknown>>, at = '/today') =>
  drawAtPhone(<TodayPage />, { at, route: '/today', viewer: lead, answers: { stop: builtStop(), crews, ...answers } });

const dayOf = (day: string) => shelfName(todayDocument as never, { day, crewId: null });

describe('the days on a phone', () => {
  it('outlive a clock that runs ahead while there is no signal, and go with a later download', async () => {
    const name = storeName('o', 'm');
    let clock = Date.parse(NOW);
    const open = () => Phone.open(name, { now: () => new Date(clock) });
    const first = await open();
    await first.shelve(dayOf('2026-09-24'), { today: [] }, new Date(clock).toISOString());
    first.close();
    clock += 16 * DAY_MS;
    const ahead = await open();
    expect(ahead.shelved(dayOf('2026-09-24'))).not.toBeNull();
    await ahead.shelve(dayOf('2026-10-10'), { today: [] }, new Date(clock).toISOString());
    expect(ahead.shelvedNames('')).toEqual([dayOf('2026-10-10')]);
    ahead.close();
    const again = await open();
    expect(again.shelvedNames('')).toEqual([dayOf('2026-10-10')]);
    again.close();
  });

  it('come with the next day on which there is work, for those who go with a crew', async () => {
    const asked: string[] = [];
    const today = ({ day }: { day: string }) => {
      asked.push(day);
      const route = builtStop()['route'] as object;
      return day === '2026-09-24' || day === '2026-09-26' ? [{ ...route, id: `route ${day}`, day }] : [];
    };
    page({ today });
    await screen.findByRole('heading', { level: 1 });
    await waitFor(() => expect(new Set(asked)).toEqual(new Set(['2026-09-24', '2026-09-25', '2026-09-26'])));
  });

  it('are named where the day that is looked for is not among them and it cannot be fetched, with a way to each', async () => {
    const phone = await Phone.open(storeName('o-larkspur', 'me'), { now: () => new Date(NOW) });
    await phone.shelve(dayOf('2026-09-24'), { today: [], crews: [] }, NOW);
    phone.close();
    const { user, address } = page({ today: down }, '/today?day=2026-09-25');
    expect(await screen.findByText(/Friday 25 September is not on this phone/)).toBeTruthy();
    expect(screen.getByRole('button', { name: 'Day before' })).toBeTruthy();
    await user.click(screen.getByRole('link', { name: 'Thursday 24 September' }));
    expect(address()).toBe('/today?day=2026-09-24');
  });
});

it('a page that lay open over night says that it is the next day', async () => {
  const next = { ...me, organization: { ...me.organization, now: '2026-09-25T14:00:00Z' } };
  let told = me;
  const asked: string[] = [];
  const today = ({ day }: { day: string }) => {
    asked.push(day);
    return [];
  };
  page({ today, me: () => told });
  await waitFor(() => expect(asked).toContain('2026-09-24'));
  told = next;
  // Looked at until it says so: the first answer of the clock may still be on its way.
  await waitFor(() => {
    document.dispatchEvent(new Event('visibilitychange'));
    expect(screen.getByText('Friday 25 September')).toBeTruthy();
  });
  await waitFor(() => expect(asked).toContain('2026-09-25'));
});
