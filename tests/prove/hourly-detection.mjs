// Detection from 15-minute and hourly usage in 200 simulated site-years without any fault, which may tell 0.1 of false alarms a site-year, and
// in meters with one fault each: how many are found, with the right kind and zone, and after how many days.
// `npm run prove -- hourly-detection 400 7` takes another number of site-years and another first seed.
import { judgeHourly } from '../../libs/metering/dist/detection/hourly/judge-hourly.js';
import { healthyWish } from '../libs/metering/detection/hourly/healthy-wish.mjs';
import { simulatedMeter } from '../libs/metering/detection/hourly/simulated-meter.mjs';

export const readsShared = false;

const SITE_YEARS = 200;
const FIRST_SEED = 10_001;
const MOST_FALSE_PER_SITE_YEAR = 0.1;
/** Flows on record are drawn 15 % off by zone: that they are to be tested is true of these meters. */
const NO_ALARM = 'flow to be tested';
const FAULTY = 60;
const MOST_WRONG_ZONES = 0.1;
/** 2025-04-12; faults begin on 2025-07-03 in meters whose minutes change by the month. */
const FIRST_DAY = 20_190;
const FAULT_DAY = 84;
const BEGAN = FIRST_DAY + FAULT_DAY;

const tally = (episodes) => {
  const counts = {};
  for (const { kind } of episodes) counts[kind] = (counts[kind] ?? 0) + 1;
  return (
    Object.entries(counts)
      .map(([kind, count]) => `${kind} ${count}`)
      .join(', ') || 'none'
  );
};

const zoneOf = (seed) => seed % 6;
const ofZone = (episode, seed) =>
  ['zone flow changed', 'not delivering'].includes(episode.kind) && episode.zoneIds[0] === `z${zoneOf(seed) + 1}`;
const zone = (factor, least, stepMinutes = 15) => ({
  wish: (seed) => ({ stepMinutes, fault: { zone: { zone: zoneOf(seed), fromDay: FAULT_DAY, factor } } }),
  right: ofZone,
  least,
});

const FAULTS = {
  'steady flow of 3 L/min': {
    wish: (seed) => ({
      sizeMm: 20,
      stepMinutes: seed % 2 ? 15 : 60,
      kind: seed % 4 ? 'irrigation' : 'mixed',
      fault: { steady: { fromDay: FAULT_DAY, litresPerMinute: 3 } },
    }),
    right: ({ kind }) => kind === 'steady flow',
    least: 0.95,
  },
  'zone 25 % more': zone(1.25, 0.7),
  'zone 25 % less': zone(0.75, 0.7),
  'zone without flow': zone(0, 0.9),
  'zone without flow, hourly': zone(0, 0, 60),
  'all zones 40 % less': {
    wish: () => ({ fault: { allZones: { fromDay: FAULT_DAY, factor: 0.6 } } }),
    right: ({ kind, zoneIds }) => kind === 'not delivering' && zoneIds.length === 6,
    least: 0.9,
  },
  'run at 22:00 every other day': {
    wish: () => ({ fault: { offSchedule: { fromDay: FAULT_DAY, clockMinute: 1320, minutes: 30, everyDays: 2, litresPerMinute: 40 } } }),
    right: ({ kind }) => kind === 'off-schedule run',
    least: 0.95,
  },
  '20 % more during daily runs': {
    wish: () => ({ everyDays: 1, fault: { duringRuns: { fromDay: FAULT_DAY, share: 0.2 } } }),
    right: ({ kind }) => kind === 'unexplained use',
    least: 0,
  },
};

function trial({ wish, right }, firstSeed) {
  const delays = [];
  let [others, wrongZone] = [0, 0];
  for (let seed = firstSeed; seed < firstSeed + FAULTY; seed++) {
    const { evidence } = simulatedMeter({ seed, firstDay: FIRST_DAY, days: 144, zones: 6, everyDays: 1 + (seed % 2), ...wish(seed) });
    const told = judgeHourly(evidence).filter(({ openedLocalDay }) => openedLocalDay > BEGAN);
    const found = told.find((episode) => right(episode, seed));
    if (found) delays.push(found.openedLocalDay - BEGAN);
    others += told.length - (found ? 1 : 0);
    const [firstOfZone] = told.filter(({ causeFamily }) => causeFamily.startsWith('zone flow'));
    if (right === ofZone && firstOfZone && !firstOfZone.zoneIds.includes(`z${zoneOf(seed) + 1}`)) wrongZone += 1;
  }
  return { delays: delays.sort((a, b) => a - b), others, wrongZone };
}

export async function prove([siteYears = SITE_YEARS, first = FIRST_SEED] = []) {
  const [count, seed] = [Number(siteYears), Number(first)];
  const lines = [];
  const faults = [];
  const healthy = Array.from({ length: count }, (_, at) => judgeHourly(simulatedMeter(healthyWish(seed + at)).evidence)).flat();
  const alarms = healthy.filter(({ kind }) => kind !== NO_ALARM);
  const rate = alarms.length / count;
  lines.push(
    `first seed ${seed}; ${count} site-years without fault: ${alarms.length} false alarms, ${rate.toFixed(3)} a site-year (${tally(alarms)}); ${healthy.length - alarms.length} flows to be tested`,
  );
  if (rate > MOST_FALSE_PER_SITE_YEAR) faults.push(`more than ${MOST_FALSE_PER_SITE_YEAR} false alarms a site-year`);
  for (const [name, fault] of Object.entries(FAULTS)) {
    const { delays, others, wrongZone } = trial(fault, seed);
    const median = delays.length ? delays[Math.floor(delays.length / 2)].toFixed(1) : '-';
    lines.push(
      `${name}: ${delays.length} of ${FAULTY} found, median ${median} days, longest ${delays.at(-1)?.toFixed(1) ?? '-'}; ${others} others told, ${wrongZone} with other zones named only`,
    );
    if (wrongZone > MOST_WRONG_ZONES * FAULTY) faults.push(`${name}: more than ${MOST_WRONG_ZONES} with other zones named only`);
    if (delays.length < fault.least * FAULTY) faults.push(`${name}: fewer than ${fault.least} found`);
  }
  if (faults.length) throw new Error(`\n  ${[...lines, ...faults].join('\n  ')}`);
  return lines.join('\n');
}
