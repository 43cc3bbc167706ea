import { orderDay } from '@rillbook/routing/day/order-day.js';
import { restOfDay } from '@rillbook/routing/day/rest-of-day.js';
import { timedRoute } from '@rillbook/routing/plan/timed-route.js';
import { seededRandom } from '@rillbook/routing/random-source.js';
import { budgetOfRounds } from '@rillbook/routing/search-budget.js';
import { givenTravel } from '@rillbook/routing/travel/travel-table.js';
import { describe, expect, it } from 'vitest';
import { refusalOf } from '../refusal-of.js';
import { aCrewDay, aStop, HOUR, planeTravel } from './a-plan.js';
import { permutations } from './exact-orders.js';

const order = (input: Parameters<typeof orderDay>[0]) => orderDay(input, seededRandom(1), budgetOfRounds(400));

/** A day with its places at random; every second seed has windows, every third differs by direction. */
function aDay(seed: number) {
  const random = seededRandom(seed);
  const size = 4 + (seed % 4);
  const points = Array.from({ length: size }, () => [Math.floor(random() * 40), Math.floor(random() * 40)] as const);
  const symmetric = planeTravel(points);
  const skewed = givenTravel(
    points.map((_, from) => points.map((_to, to) => symmetric.seconds[from * size + to]! + (from < to ? 300 : 0))),
  );
  const stops = points.slice(1).map((_, at) => {
    const opensS = (7 + Math.floor(random() * 4)) * HOUR;
    return aStop({
      id: `s${at}`,
      place: at + 1,
      serviceS: 900,
      windows: seed % 2 && at % 2 ? [{ opensS, closesS: opensS + 2 * HOUR }] : null,
    });
  });
  return { day: aCrewDay({ endPlace: seed % 5 ? 0 : null }), stops, travel: seed % 3 ? symmetric : skewed };
}

describe('the order of a day', () => {
  it('drives least of all orders in which every window holds', () => {
    for (let seed = 1; seed <= 20; seed += 1) {
      const { day, stops, travel } = aDay(seed);
      const judged = (route: readonly number[]) => timedRoute({ travel, stops, crewDays: [day], evenness: 0 }, day, route);
      const inTime = [...permutations(stops.map((_, at) => at))].map(judged).filter((one) => one.stops.every(({ lateS }) => lateS === 0));
      const found = judged(order({ day, stops, travel }));
      expect(found.stops, `seed ${seed}`).toHaveLength(stops.length);
      if (inTime.length > 0) expect(found.driveS, `seed ${seed}`).toBe(Math.min(...inTime.map(({ driveS }) => driveS)));
    }
  });

  it('keeps every stop though the day is too full, and puts last what nobody can reach in time', () => {
    const travel = planeTravel([
      [0, 0],
      [10, 0],
      [20, 0],
    ]);
    const gone = [{ opensS: 0, closesS: 6 * HOUR }];
    const stops = [
      aStop({ id: 'gone', place: 2, windows: gone }),
      aStop({ id: 'long', place: 1, serviceS: 20 * HOUR }),
      aStop({ id: 'unknown', place: null }),
    ];
    expect(order({ day: aCrewDay(), stops, travel })).toEqual([1, 0, 2]);
    expect(order({ day: aCrewDay(), stops: [stops[2]!, stops[1]!], travel })).toEqual([1, 0]);
  });
});

describe('the rest of a broken day', () => {
  it('starts where and when the crew stands, with the hours that are left', () => {
    const rest = restOfDay(aCrewDay(), { nowS: 11 * HOUR, place: 3, doneS: 3.5 * HOUR, doneLoad: 4 });
    expect(rest).toEqual(aCrewDay({ startPlace: 3, opensS: 11 * HOUR, mostBusyS: 4.5 * HOUR, mostLoad: 16 }));
    expect(restOfDay(aCrewDay(), { nowS: 0, place: null, doneS: 99 * HOUR, doneLoad: 0 })).toMatchObject({
      opensS: 7 * HOUR,
      mostBusyS: 0,
    });
  });

  it('is refused without a time', () => {
    expect(refusalOf(() => restOfDay(aCrewDay(), { nowS: Number.NaN, place: 0, doneS: 0, doneLoad: 0 }))[0]).toBe(
      'BROKEN_DAY_OUT_OF_DOMAIN',
    );
  });
});

describe('times of a day', () => {
  it('leave so that nobody waits at the first stop, and tell driving, work and waiting apart', () => {
    const travel = planeTravel([
      [0, 0],
      [30, 0],
      [60, 0],
    ]);
    const stops = [
      aStop({ place: 1, windows: [{ opensS: 9 * HOUR, closesS: 11 * HOUR }] }),
      aStop({ id: 's2', place: 2, windows: [{ opensS: 12 * HOUR, closesS: 13 * HOUR }] }),
    ];
    const day = aCrewDay();
    const timed = timedRoute({ travel, stops, crewDays: [day], evenness: 0 }, day, [0, 1]);
    expect(timed).toMatchObject({ leaveS: 8.5 * HOUR, homeS: 13.5 * HOUR, driveS: 2 * HOUR, driveM: null, workS: HOUR, waitS: 2 * HOUR });
    expect(timed.stops.map(({ arriveS, beginS }) => [arriveS / HOUR, beginS / HOUR])).toEqual([
      [9, 9],
      [10, 12],
    ]);
  });
});
