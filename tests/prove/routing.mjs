// The routing library on published instances: three tours of TSPLIB (Reinelt 1991) against their proven optima, four of Solomon's (1987)
// problems with time windows against the best known total distance, whose solutions lie beside them. Times are processor time.
// `--seconds N` gives each Solomon instance another budget than 10 s; without it a search ends early once it is within 0.5 % of the best known.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { breachesOfPlan } from '../../libs/routing/dist/judge/breaches-of-plan.js';
import { solvePlan } from '../../libs/routing/dist/plan/solve-plan.js';
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

const said = ({ name, length, over, seconds }) =>
  `${name}: ${length.toFixed(1)}, ${(100 * over).toFixed(2)} % over, ${seconds.toFixed(1)} s`;

export async function prove(rest) {
  const at = rest.indexOf('--seconds');
  const seconds = at < 0 ? 10 : Number(rest[at + 1]);
  const tours = Object.entries(TOURS).map(([name, optimum]) => tour(name, optimum));
  const plans = ['C101', 'R101', 'R105', 'RC101'].map((name) => solomon(name, seconds));
  const missed = [...tours.filter(({ over }) => over > 0.01), ...plans.filter(({ over }) => over > 0.03)];
  if (missed.length > 0) throw new Error(missed.map(said).join('; '));
  return [...tours, ...plans].map(said).join('\n');
}
