import { cleanup, screen, waitFor } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { PhonePage } from '../../../apps/web/src/features/fieldwork/phone/PhonePage.js';
import { TodayPage } from '../../../apps/web/src/features/fieldwork/today/TodayPage.js';
import { SignInPage } from '../../../apps/web/src/features/identity/SignInPage.js';
import { Phone } from '../../../apps/web/src/offline/phone.js';
import { OWNER, storeName } from '../../../apps/web/src/offline/store.js';
import { arePagesKept, keepPages } from '../../../apps/web/src/session/new-version.js';
import { builtCrew } from '../support/built.js';
import { drawPage, viewerOf } from '../support/draw-page.js';
import { refusal } from '../support/fake-server.js';
import { drawAtPhone, freshPhone } from './at-phone.js';
import { builtStop, me, NOW } from './built-stop.js';

beforeEach(freshPhone);
afterEach(cleanup);

const lead = viewerOf({ role: 'crewLead', permissions: ['read routes', 'record fieldwork'], crewIds: ['crew-1'] });

async function leftBy(memberId: string, name: string, count: number): Promise<void> {
  const phone = await Phone.open(storeName('o-larkspur', memberId), { now: () => new Date(NOW) });
  await phone.keepFact(OWNER, name);
  for (let nth = 0; nth < count; nth += 1)
    await phone.save({ kind: 'note', payloadVersion: 1, body: '{}', subject: `note ${nth}`, words: 'a note' });
  phone.close();
}

describe('a phone that several people use', () => {
  const WORDS =
    'Ana Ruiz has 2 things on this phone that the office does not have. Only Ana Ruiz can send them: sign in as Ana Ruiz here and open Today.';

  it('says at the door what somebody else has not sent', async () => {
    await leftBy('ana', 'Ana Ruiz', 2);
    drawPage(<SignInPage onEntered={() => undefined} />, { at: '/sign-in', answers: { signInPage: { demo: [], empty: false } } });
    expect(await screen.findByText(WORDS)).toBeTruthy();
  });

  it('says so on its own page too, and nothing of the person who is signed in', async () => {
    await leftBy('ana', 'Ana Ruiz', 2);
    await leftBy('me', 'Dell Okafor', 1);
    drawAtPhone(<PhonePage />, { at: '/today/phone', viewer: lead });
    expect(await screen.findByText(WORDS)).toBeTruthy();
    expect(screen.queryByText(/Dell Okafor has/)).toBeNull();
  });
});

it('says where the browser may clear what is here, and what helps', async () => {
  drawAtPhone(<PhonePage />, { at: '/today/phone', viewer: lead });
  expect(await screen.findByText(/The browser may clear what is on this phone/)).toBeTruthy();
  expect(screen.getByText(/Put Rillbook on the home screen: there the browser keeps what is saved/)).toBeTruthy();
});

describe('the pages on a phone', () => {
  const today = (answers: Readonly<Record<string, unknown>>) =>
    drawAtPhone(<TodayPage />, {
      at: '/today',
      route: '/today',
      viewer: lead,
      answers: { stop: builtStop(), today: [builtStop()['route']], crews: [builtCrew('crew-1', 'Crew 1')], ...answers },
    });

  it('are not said to be ready without signal before the browser has kept them; a newer version comes only where the server answers', async () => {
    today({});
    expect(await screen.findByText(/Not ready without signal: this browser has not kept the pages yet/)).toBeTruthy();
    const postMessage = vi.fn();
    const registration = { waiting: { postMessage }, addEventListener: () => undefined };
    const container = {
      ready: Promise.resolve(),
      controller: {},
      register: () => Promise.resolve(registration),
      addEventListener: () => undefined,
    };
    Object.defineProperty(navigator, 'serviceWorker', { configurable: true, value: container });
    cleanup();
    // The line is dead, whatever the phone thinks of it.
    let isDown = true;
    const answering = () => {
      if (isDown) throw refusal('UNFORESEEN', 'The server was restarted.');
      return me;
    };
    const drawn = today({ me: answering });
    await keepPages();
    await waitFor(() => expect(arePagesKept()).toBe(true));
    expect(await screen.findByText('Ready without signal.', {}, { timeout: 20_000 })).toBeTruthy();
    const asked = () => drawn.calls.filter(({ name }) => name === 'OrganizationClock').length;
    await waitFor(() => expect(asked()).toBeGreaterThan(1));
    expect(postMessage).not.toHaveBeenCalled();
    isDown = false;
    cleanup();
    today({ me: answering });
    await waitFor(() => expect(postMessage).toHaveBeenCalledWith('take over'));
  });
});
