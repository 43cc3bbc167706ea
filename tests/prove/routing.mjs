// The routing library on published instances: three tours of TSPLIB (Reinelt 1991) against their proven optima, four of Solomon's (1987)
// problems with time windows against the best known total distance, whose solutions lie beside them. Times are processor time.
// Each Solomon instance has 3 s, so that the whole is short; `--seconds 10` gives more. Last, a month of the demonstration: every property twice,
// planned, against a person's list that is driven in the order of the file and cut into days of eight hours.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { breachesOfPlan } from '../../libs/routing/dist/judge/breaches-of-plan.js';
import { solvePlan } from '../../libs/routing/dist/plan/solve-plan.js';
import { straightLineTravel } from '../../libs/routing/dist/travel/straight-line-travel.js';
import { driveInOrder } from '../../libs/routing/dist/travel/drive-in-order.js';
import { seededRandom } from '../../libs/routing/dist/random-source.js';
import { shortestTour } from '../../libs/routing/dist/tour/shortest-tour.js';

export const readsShared = true;

const shared = path.resolve(import.meta.dirname, '../../../shared/data/routing');
const read = (name) => readFileSync(path.join(shared, name), 'utf8').split(/\r?\n/);

const processorSeconds = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};
const budgetOf = (seconds) => {
  const begun = processorSeconds();
  return () => Math.min(1, (processorSeconds() - begun) / seconds);
};

/** Proven optima as TSPLIB prints them (from memory). */
const TOURS = { berlin52: 7542, eil51: 426, st70: 675 };

function tour(name, optimum) {
  const points = read(`${name}.tsp`)
    .map((line) => line.trim().split(/\s+/).map(Number))
    .filter((row) => row.length === 3 && row.every(Number.isFinite));
  // EUC_2D: rounded to the nearest whole number.
  const distances = Float64Array.from(points.flatMap(([, x, y]) => points.map(([, x2, y2]) => Math.round(Math.hypot(x - x2, y - y2)))));
  const { order, length } = shortestTour(distances, seededRandom(1), budgetOf(1));
  if (new Set(order).size !== points.length) throw new Error(`${name}: not every place once`);
  return { name, length, over: length / optimum - 1, seconds: 1 };
}

function solomon(name, seconds) {
  const rows = read(`${name}.txt`).map((line) => line.trim().split(/\s+/).map(Number));
  const [vehicles, capacity] = rows.find((row) => row.length === 2 && row.every(Number.isFinite));
  const customers = rows.filter((row) => row.length === 7 && row.every(Number.isFinite));
  // The files' rule: distances cut after the first decimal; driving takes as long as it is far.
  const way = ([, x, y], [, x2, y2]) => Math.floor(10 * Math.hypot(x - x2, y - y2) + 1e-9) / 10;
  const table = Float64Array.from(customers.flatMap((from) => customers.map((to) => way(from, to))));
  const [depot, ...others] = customers;
  const input = {
    travel: { size: customers.length, seconds: table, metres: table },
    stops: others.map(([number, , , demand, ready, due, service]) => ({
      id: String(number),
      place: number,
      serviceS: service,
      load: demand,
      skills: [],
      windows: [{ opensS: ready, closesS: due }],
      wholeWorkInside: false,
      firstDay: null,
      lastDay: null,
      wantedDay: null,
      perDayOffS: 0,
      leaveOutS: 1e5,
      locked: null,
    })),
    crewDays: Array.from({ length: vehicles }, (_, vehicle) => ({
      id: String(vehicle),
      crewId: String(vehicle),
      day: 0,
      skills: [],
      startPlace: 0,
      endPlace: 0,
      opensS: depot[4],
      closesS: depot[5],
      mostBusyS: Number.POSITIVE_INFINITY,
      mostLoad: capacity,
      goingOutS: 0,
    })),
    evenness: 0,
  };
  const best = Number(/Cost ([\d.]+)/.exec(read(`${name}.sol`).join('\n'))[1]);
  const begun = processorSeconds();
  const found = solvePlan(input, seededRandom(1), budgetOf(seconds));
  const took = processorSeconds() - begun;
  const breaches = [...breachesOfPlan(input, found), ...found.unplaced.map((stop) => ({ code: 'unplaced', stop }))];
  if (breaches.length > 0) throw new Error(`${name}: the plan breaks ${JSON.stringify(breaches.slice(0, 3))}`);
  const length = found.routes.filter((route) => route.length > 0).reduce((sum, route) => sum + lengthOf(route, customers, way), 0);
  return { name, length, over: length / best - 1, seconds: took };
}

const lengthOf = (route, customers, way) => {
  const places = [0, ...route.map((stop) => stop + 1), 0].map((place) => customers[place]);
  return places.slice(1).reduce((sum, to, at) => sum + way(places[at], to), 0);
};

/** Work at each stop of the demonstration's month, and the most of a day. [s] */
const WORK_S = 2700;
const DAY_S = 8 * 3600;

/** Driving of a planned month over that of the same visits in the order of the demonstration's file. */
function demoMonth() {
  const [head, ...rows] = readFileSync(path.resolve(import.meta.dirname, '../../apps/api/demo/larkspur-grounds/properties.csv'), 'utf8')
    .trim()
    .split(/\r?\n/)
    .map((line) => line.match(/("([^"]|"")*"|[^,]*)(,|$)/g).map((cell) => cell.replace(/,$/, '')));
  const column = (name) => head.indexOf(name);
  const positions = rows.map((row) => ({ latitude: Number(row[column('latitude')]), longitude: Number(row[column('longitude')]) }));
  const travel = straightLineTravel(positions);
  const visits = [...positions.keys(), ...positions.keys()];
  const days = [[]];
  for (const place of visits) {
    const longer = [...days.at(-1), place];
    if (driveInOrder(travel, longer) + WORK_S * longer.length > DAY_S) days.push([place]);
    else days[days.length - 1] = longer;
  }
  const input = {
    travel,
    stops: visits.map((place, at) => ({
      id: String(at),
      place,
      serviceS: WORK_S,
      load: 1,
      skills: [],
      windows: null,
      wholeWorkInside: true,
      // The first visit of a property in the first half of the month, the second in the other.
      firstDay: at < positions.length ? null : Math.ceil(days.length / 2),
      lastDay: at < positions.length ? Math.ceil(days.length / 2) - 1 : null,
      wantedDay: null,
      perDayOffS: 0,
      leaveOutS: 1e6,
      locked: null,
    })),
    crewDays: Array.from({ length: 2 * Math.ceil(days.length / 2) }, (_, day) => ({
      id: String(day),
      crewId: 'crew',
      day,
      skills: [],
      startPlace: null,
      endPlace: null,
      opensS: 7 * 3600,
      closesS: 15.5 * 3600,
      mostBusyS: DAY_S,
      mostLoad: 60,
      goingOutS: 0,
    })),
    evenness: 0,
  };
  const found = solvePlan(input, seededRandom(1), budgetOf(3));
  if (breachesOfPlan(input, found).length > 0 || found.unplaced.length > 0)
    throw new Error(`the month leaves out ${found.unplaced.length} stops`);
  const drive = (routes) => routes.reduce((sum, route) => sum + driveInOrder(travel, route), 0);
  const planned = drive(found.routes.map((route) => route.map((stop) => visits[stop])));
  const listed = drive(days);
  return { planned, listed, ratio: planned / listed };
}

const said = ({ name, length, over, seconds }) =>
  `${name}: ${length.toFixed(1)}, ${(100 * over).toFixed(2)} % over, ${seconds.toFixed(1)} s`;

export async function prove(rest) {
  const at = rest.indexOf('--seconds');
  const seconds = at < 0 ? 3 : Number(rest[at + 1]);
  const tours = Object.entries(TOURS).map(([name, optimum]) => tour(name, optimum));
  const plans = ['C101', 'R101', 'R105', 'RC101'].map((name) => solomon(name, seconds));
  const month = demoMonth();
  if (!(month.ratio < 1)) throw new Error(`the planned month drives ${month.ratio.toFixed(2)} times the list`);
  const missed = [...tours.filter(({ over }) => over > 0.01), ...plans.filter(({ over }) => over > 0.03)];
  if (missed.length > 0) throw new Error(missed.map(said).join('; '));
  const hours = (seconds) => (seconds / 3600).toFixed(1);
  const ofMonth = `demonstration's month: ${hours(month.planned)} h of driving against ${hours(month.listed)} h of the list, ${month.ratio.toFixed(2)} times`;
  return [...[...tours, ...plans].map(said), ofMonth].join('\n');
}
