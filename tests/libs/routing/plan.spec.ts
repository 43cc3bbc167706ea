import { breachesOfPlan } from '@rillbook/routing/judge/breaches-of-plan.js';
import { whyUnplaced } from '@rillbook/routing/judge/why-unplaced.js';
import type { Assignment, PlanInput } from '@rillbook/routing/plan/plan-input.js';
import { solvePlan } from '@rillbook/routing/plan/solve-plan.js';
import { timedRoute } from '@rillbook/routing/plan/timed-route.js';
import { seededRandom } from '@rillbook/routing/random-source.js';
import { budgetOfRounds } from '@rillbook/routing/search-budget.js';
import { describe, expect, it } from 'vitest';
import { refusalOf } from '../refusal-of.js';
import { aCrewDay, aRandomPlan, aStop, HOUR, planeTravel } from './a-plan.js';
import { everyAssignment } from './exact-orders.js';

const solved = (input: PlanInput, rounds = 300, seed = 1): Assignment => solvePlan(input, seededRandom(seed), budgetOfRounds(rounds));

/** What a plan costs, worked out from its times and not from the search's own sums. */
function costOf(input: PlanInput, { routes, unplaced }: Assignment): number {
  const days = routes.map((route, at) => {
    const day = input.crewDays[at]!;
    const { driveS, workS } = timedRoute(input, day, route);
    const off = route.reduce((sum, stop) => {
      const { wantedDay, perDayOffS } = input.stops[stop]!;
      return sum + (wantedDay === null ? 0 : perDayOffS * Math.abs(day.day - wantedDay));
    }, 0);
    return route.length ? driveS + off + day.goingOutS + (input.evenness * (driveS + workS) ** 2) / day.mostBusyS : 0;
  });
  return [...days, ...unplaced.map((stop) => input.stops[stop]!.leaveOutS)].reduce((sum, cost) => sum + cost, 0);
}

const RANDOM_PLANS = 80;

describe('a plan of random months', () => {
  it('holds every hour, window, date, skill and load, and gives a reason for each stop without a place', () => {
    let unplaced = 0;
    for (let seed = 1; seed <= RANDOM_PLANS; seed += 1) {
      const input = aRandomPlan(seed);
      const plan = solved(input, 60, seed);
      expect(breachesOfPlan(input, plan), `seed ${seed}`).toEqual([]);
      expect(whyUnplaced(input, plan), `seed ${seed}`).toHaveLength(plan.unplaced.length);
      unplaced += plan.unplaced.length;
    }
    expect(unplaced).toBeGreaterThan(RANDOM_PLANS);
  });

  it('keeps locked stops on their days in their order when it plans again', () => {
    for (let seed = 1; seed <= 40; seed += 1) {
      const first = aRandomPlan(seed);
      const before = solved(first, 20, seed);
      const locked = new Map(
        before.routes.flatMap((route, day) =>
          route.flatMap((stop, position) => (position % 2 ? [] : [[stop, { crewDayId: first.crewDays[day]!.id, position }] as const])),
        ),
      );
      const input = { ...first, stops: first.stops.map((stop, at) => ({ ...stop, locked: locked.get(at) ?? null })) };
      const after = solved(input, 60, seed + 1);
      expect(breachesOfPlan(input, after), `seed ${seed}`).toEqual([]);
      for (const [stop, { crewDayId }] of locked) {
        const day = input.crewDays.findIndex(({ id }) => id === crewDayId);
        expect(after.routes[day], `seed ${seed}`).toContain(stop);
      }
    }
  });

  it('costs no more than the best of all plans where all can be tried', () => {
    for (let seed = 1; seed <= 8; seed += 1) {
      const { crewDays, stops, ...rest } = aRandomPlan(seed);
      const input = { ...rest, crewDays: crewDays.slice(0, 2), stops: stops.slice(0, 4) };
      let best = Number.POSITIVE_INFINITY;
      for (const plan of everyAssignment(input)) if (breachesOfPlan(input, plan).length === 0) best = Math.min(best, costOf(input, plan));
      expect(costOf(input, solved(input, 300)), `seed ${seed}`).toBeCloseTo(best, 6);
    }
  });

  it('is the same for the same seed and rounds', () => {
    const input = aRandomPlan(11);
    expect(solved(input, 100, 5)).toEqual(solved(input, 100, 5));
  });
});

/** A depot at 0, three properties on a line. */
const line = planeTravel([
  [0, 0],
  [10, 0],
  [20, 0],
  [30, 0],
]);
const month = (changes: Partial<PlanInput>): PlanInput => ({
  travel: line,
  stops: [aStop()],
  crewDays: [aCrewDay()],
  evenness: 0,
  ...changes,
});

describe('why a stop has no place', () => {
  const reason = (changes: Partial<PlanInput>) => {
    const input = month(changes);
    return whyUnplaced(input, solved(input, 50))[0];
  };

  it('says what is missing', () => {
    expect(reason({ stops: [aStop({ place: null })] })).toEqual({ code: 'noPosition' });
    expect(reason({ stops: [aStop({ skills: ['electric'] })] })).toEqual({ code: 'noSkill', skills: ['electric'] });
    expect(reason({ stops: [aStop({ firstDay: 3, lastDay: 5 })] })).toEqual({ code: 'noDay', firstDay: 3, lastDay: 5 });
    expect(reason({ crewDays: [] })).toEqual({ code: 'noDay', firstDay: null, lastDay: null });
    expect(reason({ stops: [aStop({ serviceS: 9 * HOUR })] })).toEqual({ code: 'tooLong', workS: 9 * HOUR, mostS: 8 * HOUR });
    const gate = [{ opensS: 7 * HOUR, closesS: 7.25 * HOUR }];
    expect(reason({ stops: [aStop({ windows: gate })] })).toEqual({ code: 'neverOpen', workS: HOUR / 2 });
    expect(reason({ stops: [aStop({ windows: { 4: gate } })] })).toEqual({ code: 'neverOpen', workS: HOUR / 2 });
  });

  it('says how much room the fullest days still have', () => {
    const stops = [aStop({ serviceS: 6 * HOUR, leaveOutS: 500 * HOUR }), aStop({ id: 's2', serviceS: 2 * HOUR })];
    expect(reason({ stops })).toEqual({ code: 'daysFull', needsS: 2 * HOUR, mostRoomS: 2 * HOUR - 1200, crewDayId: 'c1/0' });
  });

  it('says when hours clash though there is room, and when the drive is not worth it', () => {
    const windows = [{ opensS: 8 * HOUR, closesS: 9 * HOUR }];
    const stops = [aStop({ serviceS: HOUR, windows, leaveOutS: 500 * HOUR }), aStop({ id: 's2', place: 3, serviceS: HOUR, windows })];
    expect(reason({ stops })).toEqual({ code: 'hoursClash', crewDayId: 'c1/0' });
    expect(reason({ stops: [aStop({ leaveOutS: 60 })] })).toEqual({ code: 'driveTooLong', crewDayId: 'c1/0', addedS: 1200 });
  });
});

describe('the judge of plans', () => {
  const breaches = (changes: Partial<PlanInput>, plan: Assignment) => breachesOfPlan(month(changes), plan).map(({ code }) => code);

  it('finds each breach', () => {
    expect(breaches({}, { routes: [[]], unplaced: [] })).toEqual(['missing']);
    expect(breaches({}, { routes: [[0, 0]], unplaced: [] })).toEqual(['twice']);
    expect(breaches({ stops: [aStop({ firstDay: 1 })] }, { routes: [[0]], unplaced: [] })).toEqual(['notAllowed']);
    const early = [{ opensS: 0, closesS: 7 * HOUR }];
    expect(breaches({ stops: [aStop({ windows: early, wholeWorkInside: false })] }, { routes: [[0]], unplaced: [] })).toEqual(['late']);
    expect(breaches({ crewDays: [aCrewDay({ closesS: 7.5 * HOUR })] }, { routes: [[0]], unplaced: [] })).toEqual(['homeLate']);
    expect(breaches({ crewDays: [aCrewDay({ mostBusyS: HOUR / 2 })] }, { routes: [[0]], unplaced: [] })).toEqual(['tooBusy']);
    expect(breaches({ stops: [aStop({ load: 21 })] }, { routes: [[0]], unplaced: [] })).toEqual(['tooMuchLoad']);
    const stops = [0, 1].map((position) => aStop({ id: `s${position}`, locked: { crewDayId: 'c1/0', position } }));
    expect(breaches({ stops }, { routes: [[1, 0]], unplaced: [] })).toEqual(['lockMoved']);
  });
});

describe('what a plan weighs', () => {
  it('brings a stop to the day it is wanted on unless that is full', () => {
    const crewDays = [0, 1, 2].map((day) => aCrewDay({ id: `c1/${day}`, day, mostBusyS: HOUR }));
    const stops = [1, 2, 3].map((place) => aStop({ id: `s${place}`, place: 1, wantedDay: 2, perDayOffS: 100 * place }));
    expect(solved(month({ crewDays, stops })).routes.map((route) => route.length)).toEqual([1, 1, 1]);
    expect(solved(month({ crewDays, stops })).routes[2]).toEqual([2]);
    expect(solved(month({ crewDays: crewDays.map((day) => ({ ...day, mostBusyS: 8 * HOUR })), stops })).routes[2]).toHaveLength(3);
  });

  it('evens days out where that is worth driving, and else drives least', () => {
    const crewDays = [0, 1].map((day) => aCrewDay({ id: `c1/${day}`, day }));
    const stops = [1, 2, 3].map((place) => aStop({ id: `s${place}`, place, serviceS: 2 * HOUR }));
    expect(
      solved(month({ crewDays, stops }))
        .routes.map((route) => route.length)
        .sort(),
    ).toEqual([0, 3]);
    expect(
      solved(month({ crewDays, stops, evenness: 1 }))
        .routes.map((route) => route.length)
        .sort(),
    ).toEqual([1, 2]);
  });

  it('leaves out the least urgent', () => {
    const stops = [5, 30, 10].map((hours, at) => aStop({ id: `s${at}`, serviceS: 4 * HOUR, leaveOutS: hours * HOUR }));
    expect(solved(month({ stops, crewDays: [aCrewDay({ mostBusyS: 8.5 * HOUR })] })).unplaced).toEqual([0]);
  });
});

describe('what is refused', () => {
  it('names the stop, place or crew day', () => {
    const code = (changes: Partial<PlanInput>) => refusalOf(() => solved(month(changes)));
    expect(code({ stops: [aStop(), aStop()] })).toEqual(['PLAN_OUT_OF_DOMAIN', { stop: 's1', reason: 'twice' }]);
    expect(code({ stops: [aStop({ place: 9 })] })).toEqual(['PLACE_OUT_OF_DOMAIN', { place: 9 }]);
    expect(code({ stops: [aStop({ serviceS: { c9: 1 } })] })[1]).toEqual({ stop: 's1', crewId: 'c1', serviceS: undefined });
    expect(code({ stops: [aStop({ locked: { crewDayId: 'gone', position: 0 } })] })[1]).toMatchObject({ crewDay: 'gone' });
    expect(code({ stops: [aStop({ leaveOutS: Number.POSITIVE_INFINITY })] })[0]).toBe('STOP_OUT_OF_DOMAIN');
    expect(code({ evenness: -1 })[0]).toBe('PLAN_OUT_OF_DOMAIN');
  });
});
