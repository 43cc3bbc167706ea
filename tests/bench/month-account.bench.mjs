import { dateOfDayNumber, dayNumberOfDate } from '../../libs/irrigation/dist/calendar/local-date.js';
import { accountOfMonth, computeMonthAccount } from '../../libs/metering/dist/account/compute-month-account.js';
import { preparedMonths } from '../../libs/metering/dist/account/needed/prepared-months.js';
import { weatherSeries } from '../../libs/metering/dist/volumes/weather-series.js';
import { runIrrigationNeed } from '../../libs/agronomy/dist/water-balance/irrigation-need.kernel.js';
import { count, medians, ratio } from '../support/measure.mjs';

export const tells =
  'a month account of 20 zones with its uncertainty, alone and with the year that it is in, against the water balance of its zones alone';

const ZONES = 20;
const AT_ONCE = 20;
/** So many that both are measured over about as long, and the machine's other work meets them alike. */
const BALANCES = 2000;
/** 90 days of warm-up and the month. */
const DAYS = 120;
const LAST_DAY = dayNumberOfDate('2026-06-30');

const traits = {
  stations: ZONES,
  programs: 3,
  startsPerProgram: 4,
  maxMinutes: null,
  minuteStep: null,
  adjustScope: 'controller',
  adjustStepPercent: 5,
  maxAdjustPercent: 200,
  monthlyAdjustPercent: null,
  runsAtOnce: 1,
  cycleSoak: true,
  rainSensor: null,
  rainSensorMm: null,
};

const zone = (at) => ({
  id: `z${at}`,
  name: `Zone ${at}`,
  meterId: null,
  handWatered: false,
  handLitresPerWeek: null,
  controllerId: 'c1',
  station: at,
  areaM2: 200 + 20 * at,
  plantFactor: 0.4 + at / 50,
  density: 1,
  shade: 1,
  rawMm: 12 + at,
  tawMm: 24 + 2 * at,
  duLq: 0.65,
  leachingFraction: 0,
  flowLPerMin: 30 + at,
  flowSource: 'measured',
  assumed: [],
});

const program = (name, from) => ({
  name,
  days: { kind: 'weekdays', weekdays: ['Mon', 'Wed', 'Fri', 'Sat'] },
  starts: [from, from + 240],
  adjustPercent: 100,
  stations: Array.from({ length: ZONES }, (_, at) => ({ station: at + 1, minutes: 6 + (at % 5), cycles: 2, soakMinutes: 20 })),
});

const fact = (effectiveAt, programs) => ({ effectiveAt, record: 'left', state: 'on', programs });

const reading = (from, to, litres) => ({
  fromLocalDay: dayNumberOfDate(from),
  toLocalDay: dayNumberOfDate(to),
  litres,
  sdLitres: 40,
  source: 'readings',
});

const property = {
  month: '2026-06',
  through: '2026-06-30',
  days: Array.from({ length: DAYS }, (_, at) => ({
    date: dateOfDayNumber(LAST_DAY - DAYS + 1 + at),
    etoMm: 4 + (at % 5) / 2,
    rainMm: at % 11 === 0 ? 7 : 0,
    etoRelativeSd: 0.05,
  })),
  zones: Array.from({ length: ZONES }, (_, at) => zone(at + 1)),
  controllers: [
    {
      id: 'c1',
      traits,
      facts: [fact('2026-04-01T08:00', [program('A', 60)]), fact('2026-06-12T09:00', [program('A', 60), program('B', 1200)])],
      pauses: [],
    },
  ],
  meters: [
    {
      id: 'm1',
      kind: 'irrigation',
      indoorLitresPerDay: null,
      winterLitresPerDay: null,
      intervals: [reading('2026-05-28', '2026-06-14', 6e5), reading('2026-06-14', '2026-07-02', 9e5)],
    },
  ],
  allowance: { from: 'ordinance', etaf: 0.8, specialLandscapeAreaM2: 0 },
  clockChanges: [],
};

/** The same property in each month of a year: what its zones needed is computed for all of them at once. */
function year() {
  const months = Array.from({ length: 12 }, (_, at) => {
    const [first, last] = [new Date(Date.UTC(2026, at, 1)), new Date(Date.UTC(2026, at + 1, 0))].map((date) =>
      date.toISOString().slice(0, 10),
    );
    const intervals = [reading(dateOfDayNumber(dayNumberOfDate(first) - 4), dateOfDayNumber(dayNumberOfDate(last) + 3), 1.4e6)];
    return { ...property, month: first.slice(0, 7), through: last, meters: property.meters.map((meter) => ({ ...meter, intervals })) };
  });
  const from = dayNumberOfDate('2025-10-03');
  const days = Array.from({ length: 455 }, (_, at) => ({ ...property.days[at % DAYS], date: dateOfDayNumber(from + at) }));
  const weather = weatherSeries(days);
  const all = () => {
    const prepared = preparedMonths(months, weather);
    return months.map((month, at) => accountOfMonth(month, prepared[at]));
  };
  for (const [at, account] of all().entries()) {
    const alone = computeMonthAccount({ ...months[at], days }).property.needed.litres;
    if (!(account.property.needed.litres === alone))
      throw new Error(`${account.month}: ${account.property.needed.litres} L, alone ${alone} L`);
  }
  return all;
}

function balance() {
  const [eto, rain] = ['etoMm', 'rainMm'].map((name) => Float64Array.from(property.days, (day) => day[name]));
  const written = { irrigation: new Float64Array(DAYS), effectiveRain: new Float64Array(DAYS) };
  return () => {
    for (const { plantFactor, density, shade, rawMm } of property.zones)
      runIrrigationNeed(
        eto,
        rain,
        { plantCoefficient: plantFactor * density * shade, readilyAvailableWater: rawMm, initialDepletion: rawMm },
        written,
      );
  };
}

const repeat = (work, often) => () => {
  for (let at = 0; at < often; at++) work();
};

export async function bench() {
  const { allowed, needed, programmed, metered } = computeMonthAccount(property).property;
  if ([allowed, needed, programmed, metered].some(({ litres }) => !(litres > 0))) throw new Error('the account lacks a volume');
  const took = await medians(
    { account: repeat(() => computeMonthAccount(property), AT_ONCE), year: year(), balance: repeat(balance(), BALANCES) },
    { warmUps: 5, runs: 15 },
  );
  const [alone, withYear, balanced] = [took.account / AT_ONCE, took.year / 12, took.balance / BALANCES];
  return [
    `an account ${alone.toFixed(2)} ms, the balance of its zones ${(1000 * balanced).toFixed(0)} µs: ${count(1000 / alone)} accounts/s`,
    `with its year ${withYear.toFixed(2)} ms: ${count(1000 / withYear)} accounts/s`,
    `ratio: the account takes ${ratio(alone / balanced)} the time of the balance within it, with its year ${ratio(withYear / balanced)}`,
  ];
}
