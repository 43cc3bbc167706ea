// Random properties for what must hold whatever the numbers are. Also for proofs, which are plain JavaScript.
import { dateOfDayNumber, dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import fc from 'fast-check';

const FIRST_DATE = '2026-03-03';
const LAST_DATE = '2026-06-30';
const WEATHER_DAYS = 30;
const CYCLES = { cycles: 2, soakMinutes: 15 };

/** A plain controller: no rounding, one run at once; it may have a rain sensor, of a known threshold or not. */
const traitsWith = (sensor) => ({
  stations: 12,
  programs: 3,
  startsPerProgram: 4,
  maxMinutes: null,
  minuteStep: null,
  adjustScope: 'controller',
  adjustStepPercent: 5,
  maxAdjustPercent: 200,
  monthlyAdjustPercent: null,
  runsAtOnce: null,
  cycleSoak: true,
  ...sensor,
});

const someSensor = fc.constantFrom(
  { rainSensor: null, rainSensorMm: null },
  { rainSensor: false, rainSensorMm: 6 },
  { rainSensor: true, rainSensorMm: 6 },
  { rainSensor: true, rainSensorMm: null },
);

const dates = Array.from({ length: dayNumberOfDate(LAST_DATE) - dayNumberOfDate(FIRST_DATE) + 1 }, (_, at) =>
  dateOfDayNumber(dayNumberOfDate(FIRST_DATE) + at),
);

const number = (min, max) => fc.double({ min, max, noNaN: true });

const someZone = (index) =>
  fc
    .record({
      meterId: fc.constantFrom(null, 'm1', 'none'),
      handWatered: fc.boolean(),
      areaM2: number(5, 2000),
      plantFactor: number(0.1, 1),
      density: number(0.5, 1.3),
      shade: number(0.5, 1),
      rawMm: number(5, 60),
      duLq: number(0.4, 1),
      leachingFraction: number(0, 0.2),
      flowLPerMin: number(1, 80),
      flowSource: fc.constantFrom('measured', 'nameplate', 'derived'),
    })
    .map((each) => ({
      ...each,
      id: `z${index}`,
      name: 'Lawn',
      controllerId: 'c1',
      station: index,
      tawMm: 40,
      handWatered: each.handWatered && index === 3,
      handLitresPerWeek: 100,
      assumed: [],
    }));

const someProgram = (name) =>
  fc.record({
    name: fc.constant(name),
    days: fc.constantFrom({ kind: 'daily' }, { kind: 'odd' }, { kind: 'weekdays', weekdays: ['Mon', 'Thu'] }),
    starts: fc.array(fc.integer({ min: 0, max: 1439 }), { minLength: 1, maxLength: 2 }),
    adjustPercent: fc.integer({ min: 10, max: 200 }),
    stations: fc.tuple(...[1, 2, 3].map((station) => number(0, 30).map((minutes) => ({ station, minutes, ...CYCLES })))),
  });

const someFact = fc
  .record({
    day: fc.integer({ min: 1, max: 28 }),
    month: fc.constantFrom('05', '06'),
    state: fc.constantFrom('on', 'on', 'off', 'weather'),
    programs: fc.tuple(someProgram('A'), someProgram('B')),
  })
  .map(({ day, month, state, programs }) => ({
    effectiveAt: `2026-${month}-${String(day).padStart(2, '0')}T09:00`,
    record: 'found',
    state,
    programs: state === 'on' ? programs : [],
  }));

const OFF_SINCE_WINTER = { effectiveAt: '2026-01-01T00:00', record: 'left', state: 'off', programs: [] };

const interval = (from, to, litres, changes) => ({
  fromLocalDay: dayNumberOfDate(from),
  toLocalDay: dayNumberOfDate(to),
  litres,
  sdLitres: 0,
  ...changes,
});

const someMeter = fc
  .record({
    litres: number(0, 5e5),
    more: number(0, 5e5),
    indoorLitresPerDay: number(0, 3000),
    kind: fc.constantFrom('irrigation', 'mixed'),
  })
  .map(({ litres, more, ...each }) => ({
    id: 'm1',
    winterLitresPerDay: null,
    ...each,
    intervals: [
      interval('2026-05-20', '2026-06-14', litres, { source: 'bills', sdLitres: 40 }),
      interval('2026-06-14', '2026-07-09', more, { source: 'readings' }),
    ],
  }));

const depths = (some) => fc.array(some, { minLength: WEATHER_DAYS, maxLength: WEATHER_DAYS });

/** A property with up to three zones, one meter, one or more dated facts and random weather: all four volumes exist, unless a zone lacks them. */
export const someProperty = fc
  .record({
    zones: fc.tuple(someZone(1), someZone(2), someZone(3)),
    count: fc.integer({ min: 1, max: 3 }),
    sensor: someSensor,
    facts: fc.array(someFact, { minLength: 0, maxLength: 4 }),
    meter: someMeter,
    eto: depths(number(0, 9)),
    rain: depths(fc.oneof(fc.constant(0), fc.constant(0), number(0, 40))),
    through: fc.integer({ min: 1, max: 30 }),
    etaf: number(0.3, 1),
    specialLandscapeAreaM2: number(0, 500),
  })
  .map(({ zones, count, sensor, facts, meter, eto, rain, through, etaf, specialLandscapeAreaM2 }) => ({
    month: '2026-06',
    through: `2026-06-${String(through).padStart(2, '0')}`,
    days: dates.map((date) => ({
      date,
      etoMm: eto[Number(date.slice(8)) % WEATHER_DAYS],
      rainMm: rain[Number(date.slice(8)) % WEATHER_DAYS],
      etoRelativeSd: 0.05,
    })),
    zones: zones.slice(0, count),
    controllers: [{ id: 'c1', traits: traitsWith(sensor), facts: [OFF_SINCE_WINTER, ...facts], pauses: [] }],
    meters: [meter],
    allowance: { from: 'ordinance', etaf, specialLandscapeAreaM2 },
    clockChanges: [],
  }));

const VOLUMES = ['allowed', 'needed', 'programmed', 'metered'];
const GAPS = ['unexplainedGap', 'settingsGap', 'landscapeGap'];
const known = ({ litres }) => litres ?? Number.NaN;

/** The largest of the four volumes, at least a litre: what a difference is measured by. */
export const largest = (volumes) => Math.max(1, ...VOLUMES.map((name) => Math.abs(volumes[name].litres ?? 0)));

/**
 * By how much the three gaps miss metered less allowed, over the largest of the four volumes: of the property, then of each meter. Null where
 * metered less allowed is absent; not a number where it is there and a gap is not.
 */
export function identityMisses({ property, meters }) {
  return [property, ...meters].map((volumes) => {
    if (volumes.meteredOverAllowed.litres === null) return null;
    const sum = GAPS.reduce((total, name) => total + known(volumes[name]), 0);
    return Math.abs(sum - volumes.meteredOverAllowed.litres) / largest(volumes);
  });
}
