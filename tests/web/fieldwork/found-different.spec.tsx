import { cleanup, screen, waitFor, within } from '@testing-library/react';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { answerOf, type EnterAnswer, type EnterQuestion } from '../../../apps/web/src/features/fieldwork/stop/enter/answer-of.js';
import { askToEnter } from '../../../apps/web/src/features/fieldwork/stop/enter/ask-to-enter.js';
import { StopPage } from '../../../apps/web/src/features/fieldwork/stop/StopPage.js';
import { viewerOf } from '../support/draw-page.js';
import { drawAtPhone, freshPhone, sentOf } from './at-phone.js';
import { builtController, builtStop, builtVisit, property } from './built-stop.js';

beforeEach(freshPhone);
afterEach(cleanup);
afterEach(() => vi.unstubAllGlobals());

const dell = viewerOf({ role: 'crewLead', permissions: ['read routes', 'record fieldwork'], crewIds: ['crew-1'] });

const zone = (station: number, needLitresPerDay: number) => ({
  ...{ zoneId: `z${station}`, station, plants: null, method: 'rotor', needLitresPerDay },
  ...{ flowLPerMin: 10, storageDays: 1, intake: null, fillMinutes: 0 },
});

/** Two zones whose roots hold one day of water, and that 18 and 12.5 minutes a day keep, at 10 L/min each. */
const ground = {
  month: '2026-09',
  traits: {
    ...{ stations: 12, programs: 3, startsPerProgram: 4, maxMinutes: 99, minuteStep: null, adjustScope: 'program' },
    ...{ adjustStepPercent: 5, maxAdjustPercent: 200, monthlyAdjustPercent: null, runsAtOnce: null, cycleSoak: true },
    ...{ rainSensor: null, rainSensorMm: null },
  },
  zones: [zone(1, 180), zone(2, 125)],
  rules: [],
  place: { addressNumber: 14, water: 'potable' },
  window: { from: 0, until: 360 },
  flowLimitLPerMin: null,
  weights: { thirst: 3, waste: 1, keyPress: 10, watering: 1 },
};
const carried = (given: object = {}) => ({ month: '2026-09', gatheredAt: '2026-09-24T15:00:00Z', form: 1, ground, reason: null, ...given });

function page(planGround: unknown, { language = 'en' as 'en' | 'es', plannedSettings = undefined as unknown } = {}) {
  const controller = builtController({ planGround, ...(plannedSettings === undefined ? {} : { plannedSettings }) });
  const stop = builtStop({ visit: builtVisit(), property: { ...property, controllers: [controller] } });
  return drawAtPhone(<StopPage />, {
    at: '/today/st1?step=settings',
    route: '/today/:stopId',
    viewer: dell,
    language,
    answers: { stop },
  });
}

/** On record: daily, 36 and 25 minutes. That is what is found too, said once more. */
async function findsIt({ user }: ReturnType<typeof page>, words = { different: 'Found different', save: 'Save as found' }) {
  await user.click(await screen.findByRole('button', { name: words.different }));
  await user.click(await screen.findByRole('button', { name: words.save }));
}

it('reckons on the phone the one percent that gives what is needed, shows nothing else, and records it as left in one tap', async () => {
  const drawn = page(carried());
  await findsIt(drawn);
  // 18 of 36 and 12.5 of 25 minutes are one half.
  const table = await screen.findByRole('table', { name: 'Program B, what to enter beside what you found' });
  const rows = within(table).getAllByRole('row').slice(1);
  expect(rows.map((row) => row.textContent)).toEqual(['Percent50100']);
  // 30 days of 305 L are 9,150 L, 2,417 US gallons; as found it is twice that.
  expect(screen.getByText('A month as found: 4,830 gal. As entered: 2,420 gal. The plants need 2,420 gal.')).toBeTruthy();
  expect(screen.queryByRole('alert')).toBeNull();
  await drawn.user.click(screen.getByRole('button', { name: 'Entered so' }));
  expect(await screen.findByText(/as left/)).toBeTruthy();
  await waitFor(() => expect(sentOf(drawn.calls, 'settings')).toHaveLength(2));
  expect(sentOf(drawn.calls, 'settings').map(({ record, programs }) => ({ record, programs }))).toMatchObject([
    { record: 'found', programs: [{ name: 'B', days: 'daily', adjustPercent: 100 }] },
    {
      record: 'left',
      programs: [
        {
          ...{ name: 'B', days: 'daily', starts: ['03:00'], adjustPercent: 50 },
          stations: [
            { station: 1, minutes: 36 },
            { station: 2, minutes: 25 },
          ],
        },
      ],
    },
  ]);
});

it('keeps the plan of the office beside it, and lets the crew set that instead', async () => {
  const drawn = page(carried());
  await findsIt(drawn);
  expect(await screen.findByRole('heading', { name: 'What the office had planned' })).toBeTruthy();
  await screen.findByRole('heading', { name: 'The least to enter now' });
  await drawn.user.click(screen.getByRole('button', { name: 'Set as planned' }));
  await waitFor(() => expect(sentOf(drawn.calls, 'settings')).toHaveLength(2));
  expect(sentOf(drawn.calls, 'settings')[1]).toMatchObject({ record: 'left', programs: [{ days: 'Mon Tue Thu Fri Sun' }] });
});

it('begins with what is on the controller where there is no plan, and lets other settings be left', async () => {
  const drawn = page(carried(), { plannedSettings: null });
  expect(await screen.findByText(/the phone tells the least to enter/)).toBeTruthy();
  await findsIt(drawn, { different: 'Record as found', save: 'Save as found' });
  await screen.findByRole('heading', { name: 'The least to enter now' });
  await drawn.user.click(screen.getByRole('button', { name: 'Left otherwise' }));
  // It begins from what the phone said.
  expect((await screen.findByRole<HTMLInputElement>('textbox', { name: /^Percent/ })).value).toBe('50');
  await drawn.user.type(screen.getByRole('textbox', { name: /^Percent/ }), '{Backspace}5');
  await drawn.user.click(screen.getByRole('button', { name: 'Save as left' }));
  await waitFor(() => expect(sentOf(drawn.calls, 'settings')).toHaveLength(2));
  expect(sentOf(drawn.calls, 'settings')[1]).toMatchObject({ record: 'left', programs: [{ adjustPercent: 55 }] });
});

it('says so where nothing is to be turned', async () => {
  const enough = { ...ground, zones: [zone(1, 360), zone(2, 250)] };
  const drawn = page(carried({ ground: enough }));
  await findsIt(drawn);
  expect(await screen.findByRole('heading', { name: 'Leave it as you found it' })).toBeTruthy();
  await drawn.user.click(screen.getByRole('button', { name: 'Left as found' }));
  await waitFor(() => expect(sentOf(drawn.calls, 'settings')).toHaveLength(2));
  expect(sentOf(drawn.calls, 'settings')[1]).toMatchObject({ record: 'left', programs: [{ adjustPercent: 100 }] });
});

it('says what percent, days and starts cannot give, where, and who can', async () => {
  // The second zone needs 90 minutes a day and is set to 25; the timer goes to 200 %, 50 minutes: 400 L a day are missing, 12,000 L in 30 days,
  // 3,170 US gallons, however much the first is watered.
  const thirsty = { ...ground, traits: { ...ground.traits, adjustScope: 'controller' }, zones: [zone(1, 180), zone(2, 900)] };
  const drawn = page(carried({ ground: thirsty }));
  await findsIt(drawn);
  expect(
    await screen.findByText(
      /^3,170 gal of that need is still not met, most of it in .+\. Within hours.+ Ask the office for the full program/,
    ),
  ).toBeTruthy();
});

it('tells old numbers as old, and another month’s not at all', async () => {
  await findsIt(page(carried({ gatheredAt: '2026-09-15T15:00:00Z' })));
  expect((await screen.findByRole('alert')).textContent).toMatch(/^Reckoned from numbers 9 days old\./);
  expect(screen.getByRole('table', { name: /what to enter/ })).toBeTruthy();
  cleanup();
  freshPhone();
  await findsIt(page(carried({ month: '2026-08', gatheredAt: '2026-08-31T15:00:00Z', ground: { ...ground, month: '2026-08' } })));
  expect((await screen.findByRole('alert')).textContent).toMatch(/^The numbers on this phone are for August 2026: too old/);
  expect(screen.queryByRole('table', { name: /what to enter/ })).toBeNull();
  cleanup();
  freshPhone();
  await findsIt(page(carried({ form: 2 })));
  expect(await screen.findByText(/This phone has no numbers to say what to enter/)).toBeTruthy();
});

it('says in Spanish too what is missing, and sets as planned then', async () => {
  const reason = { code: 'FLOWS_NOT_KNOWN', details: { zones: ['north'] } };
  await findsIt(page(carried({ ground: null, reason }), { language: 'es' }), { different: 'Está distinto', save: 'Guardar como estaba' });
  expect(await screen.findByText(/^Aquí no se puede calcular qué poner\. .*north/)).toBeTruthy();
  expect(screen.getByRole('button', { name: 'Puesto según plan' })).toBeTruthy();
});

it('asks a thread where the browser has them, takes its answer and ends it', async () => {
  const ended = vi.fn();
  class Thread {
    onmessage: ((event: { data: EnterAnswer }) => void) | null = null;
    terminate = ended;
    postMessage(question: EnterQuestion): void {
      setTimeout(() => this.onmessage?.({ data: answerOf(question) }));
    }
  }
  vi.stubGlobal('Worker', Thread);
  const told = vi.fn();
  askToEnter({ ground, found: [] } as unknown as EnterQuestion, told);
  await waitFor(() => expect(told).toHaveBeenCalledWith(answerOf({ ground, found: [] } as unknown as EnterQuestion)));
  expect(ended).toHaveBeenCalledOnce();
});
