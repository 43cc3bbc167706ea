import { cleanup, configure, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { RainLink } from '../../../apps/web/src/page/work/RainLink.js';
import { RainPausePage } from '../../../apps/web/src/features/rain/RainPausePage.js';
import { gallons } from '../support/built.js';
import { drawPage } from '../support/draw-page.js';

configure({ asyncUtilTimeout: 10_000 });

afterEach(cleanup);

const pause = (controllerId: string, change: object = {}) => ({
  controllerId,
  property: { id: `p-${controllerId}`, name: `Quail Commons ${controllerId}` },
  controller: { id: controllerId, name: 'Clubhouse' },
  // An inch and a half.
  ...{ rainMm: 38.1, lastRainOn: '2026-09-23', waterAgainOn: '2026-09-28', until: '2026-09-28T06:00:00.000Z', days: 4 },
  ...{ because: 'root zone', firstZone: 'Front turf', keptLitres: gallons(12_000), pausesItself: null, pausedUntil: null, order: null },
  ...change,
});
const order = { id: 'w0', state: 'given out', day: '2026-09-24', crew: { id: 'crew-1', name: 'Crew 1' } };
const THREE = [
  pause('c1'),
  pause('c2', { because: 'common practice', days: 2, keptLitres: null, order }),
  pause('c3', { because: 'rule', pausesItself: 'rain sensor', keptLitres: 0 }),
];

const draw = (controllers: object[] = THREE, options: object = {}) =>
  drawPage(<RainPausePage />, {
    at: '/rain',
    route: '/rain',
    answers: {
      rainPauseList: { today: '2026-09-24', withoutWeather: 1, controllers },
      crews: [{ id: 'crew-2', name: 'Crew 2' }],
      orderPauses: [{ id: 'w1' }],
    },
    ...options,
  });

describe('the rain pause list', () => {
  it('says which controllers, until when, why then, and what that keeps', async () => {
    draw();
    await screen.findByRole('heading', { level: 1, name: '2 controllers can be paused after the rain' });
    const [first, second] = within(screen.getByRole('table', { name: '2 controllers to pause by hand' }))
      .getAllByRole('row')
      .slice(1);
    expect(first!.textContent).toMatch(
      /Quail Commons c1.*Clubhouse.*1\.5 in.*Mon 28 Sep.*4 days without water.*Front turf needs water first.*12,000 gal/,
    );
    // A narrow screen has no head: what a figure is stands before it.
    expect([...first!.querySelectorAll('[data-head]')].map((cell) => cell.getAttribute('data-head'))).toEqual([
      ...['Rain of four days', 'Waters again on', 'Kept'],
    ]);
    expect(second!.textContent).toMatch(/given out: Crew 1, Thu 24 Sep.*48 hours at most, as is common practice/);
    const themselves = within(screen.getByRole('table', { name: 'One controller pauses by itself' })).getAllByRole('row')[1];
    expect(themselves!.textContent).toMatch(/Has a rain sensor.*A watering rule forbids it until then/);
    expect(screen.getByText(/Of one property nothing can be said/)).toBeTruthy();
  });

  it('gives the chosen ones to a crew in one go, without those that have an order', async () => {
    const { user, calls } = draw();
    await user.selectOptions(await screen.findByLabelText('Crew'), 'Crew 2');
    await user.click(screen.getByRole('button', { name: 'Make the work orders' }));
    expect(await screen.findByText(/One work order is made\./)).toBeTruthy();
    expect(calls.find(({ name }) => name === 'OrderPauses')?.variables).toEqual({
      input: { pauses: [{ controllerId: 'c1', until: '2026-09-28T06:00:00.000Z' }], crewId: 'crew-2', day: '2026-09-24' },
    });
  });

  it('offers nothing to give out while nothing is chosen', async () => {
    const { user } = draw();
    await user.click(await screen.findByRole('checkbox', { name: 'Pause Clubhouse at Quail Commons c1' }));
    expect(screen.queryByRole('button', { name: 'Make the work orders' })).toBeNull();
    await user.click(screen.getByRole('checkbox', { name: 'Choose all: 2 controllers to pause by hand' }));
    expect(screen.getByText(/2 controllers are chosen/)).toBeTruthy();
    // A sensor that dries too soon may be helped by hand.
    await user.click(screen.getByRole('checkbox', { name: 'Pause Clubhouse at Quail Commons c3' }));
    expect(screen.getByText(/3 controllers are chosen/)).toBeTruthy();
  });

  it('is Spanish for who reads Spanish, and says how it fills where it was dry', async () => {
    draw(THREE, { language: 'es' });
    await screen.findByRole('heading', { level: 1, name: '2 controladores se pueden pausar después de la lluvia' });
    expect(screen.getAllByText(/Front turf es la primera que necesita agua/).length).toBeGreaterThan(0);
    cleanup();
    draw([]);
    expect(await screen.findByText('There is nothing to pause')).toBeTruthy();
  });
});

describe('the way to it', () => {
  const link = (recentRain: object[]) => drawPage(<RainLink />, { at: '/', route: '/', answers: { recentRain } });
  it('stands where it rained, and nowhere else', async () => {
    link([{ stationId: 's', name: 'Piedra Bench', rainMm: 38.1, lastRainOn: '2026-09-23' }]);
    expect((await screen.findByRole('link', { name: 'See which controllers can be paused' })).getAttribute('href')).toBe('/rain');
    expect(screen.getByText(/1\.5 in of rain fell at Piedra Bench, last on Wed 23 Sep/)).toBeTruthy();
    cleanup();
    link([]);
    expect(screen.queryByRole('link')).toBeNull();
  });
});
