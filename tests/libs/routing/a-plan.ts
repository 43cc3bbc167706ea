import type { CrewDay, PlanInput, PlanStop } from '@rillbook/routing/plan/plan-input.js';
import { seededRandom } from '@rillbook/routing/random-source.js';
import type { TravelTable } from '@rillbook/routing/travel/travel-table.js';

export const HOUR = 3600;

/** A stop of half an hour at place 1, always open, on any day; each test says what differs. */
export const aStop = (changes: Partial<PlanStop> = {}): PlanStop => ({
  id: 's1',
  place: 1,
  serviceS: HOUR / 2,
  load: 1,
  skills: [],
  windows: null,
  wholeWorkInside: true,
  firstDay: null,
  lastDay: null,
  wantedDay: null,
  perDayOffS: 0,
  leaveOutS: 100 * HOUR,
  locked: null,
  ...changes,
});

/** A crew from 7:00 to 15:30 that starts and ends at place 0 and works eight hours. */
export const aCrewDay = (changes: Partial<CrewDay> = {}): CrewDay => ({
  id: 'c1/0',
  crewId: 'c1',
  day: 0,
  skills: [],
  startPlace: 0,
  endPlace: 0,
  opensS: 7 * HOUR,
  closesS: 15.5 * HOUR,
  mostBusyS: 8 * HOUR,
  mostLoad: 20,
  goingOutS: 0,
  ...changes,
});

/** Travel between points of a plane, a minute for each unit. */
export const planeTravel = (points: readonly (readonly [number, number])[]): TravelTable => {
  const seconds = Float64Array.from(points.flatMap(([x, y]) => points.map(([x2, y2]) => Math.round(60 * Math.hypot(x - x2, y - y2)))));
  return { size: points.length, seconds, metres: null };
};

/** A month in small: crews with and without a skill, stops with windows, dates, locks; some do not fit. Always the same for a seed. */
export function aRandomPlan(seed: number): PlanInput {
  const random = seededRandom(seed);
  const whole = (below: number): number => Math.floor(random() * below);
  const count = 3 + whole(25);
  const points = Array.from({ length: count + 1 }, () => [whole(60), whole(60)] as const);
  const crewDays = Array.from({ length: 1 + whole(3) }, (_, crew) =>
    Array.from({ length: 1 + whole(3) }, (_unused, day) =>
      aCrewDay({
        id: `c${crew}/${day}`,
        crewId: `c${crew}`,
        day,
        skills: crew === 0 ? ['electric'] : [],
        mostBusyS: (2 + whole(7)) * HOUR,
      }),
    ),
  ).flat();
  const stops = Array.from({ length: count }, (_, at): PlanStop => {
    const opensS = (7 + whole(6)) * HOUR;
    return aStop({
      id: `s${at}`,
      place: random() < 0.03 ? null : at + 1,
      serviceS: random() < 0.3 ? { c0: 900, c1: 1800, c2: 2700 } : 600 + whole(7200),
      skills: random() < 0.2 ? ['electric'] : [],
      windows:
        random() < 0.5
          ? null
          : random() < 0.5
            ? [{ opensS, closesS: opensS + 2 * HOUR }]
            : { 0: [{ opensS, closesS: opensS + HOUR }], 1: [] },
      wholeWorkInside: random() < 0.5,
      firstDay: random() < 0.2 ? 1 : null,
      lastDay: random() < 0.2 ? 0 : null,
      wantedDay: random() < 0.3 ? whole(3) : null,
      perDayOffS: whole(600),
      leaveOutS: whole(10) * HOUR,
    });
  });
  return { travel: planeTravel(points), stops, crewDays, evenness: random() < 0.5 ? 0 : 0.2 };
}
