import { dateOfDayNumber, dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import type { ControllerTraits } from '@rillbook/irrigation/settings/controller-traits.js';
import type { Program, SettingsFact } from '@rillbook/irrigation/settings/settings-fact.js';
import type { AccountController, AccountInput, AccountMeter, AccountZone } from '@rillbook/metering/account/account-input.js';
import type { UsageInterval } from '@rillbook/metering/intervals/usage-interval.js';
import type { AccountDay } from '@rillbook/metering/volumes/weather-series.js';

/** Traits of a plain controller: no rounding, one run at once. */
export const plainTraits: ControllerTraits = {
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
  rainSensor: null,
  rainSensorMm: null,
};

/** A zone of 100 m2 that needs what it loses, evenly watered; each test says what differs. */
export const aZone = (changes: Partial<AccountZone> = {}): AccountZone => ({
  id: 'z1',
  name: 'Lawn',
  meterId: null,
  handWatered: false,
  handLitresPerWeek: null,
  controllerId: 'c1',
  station: 1,
  areaM2: 100,
  plantFactor: 1,
  density: 1,
  shade: 1,
  rawMm: 20,
  tawMm: 40,
  duLq: 1,
  leachingFraction: 0,
  flowLPerMin: 20,
  flowSource: 'measured',
  assumed: [],
  ...changes,
});

/** A program that runs one station daily at five. */
export const aProgram = (minutesByStation: Readonly<Record<number, number>>, changes: Partial<Program> = {}): Program => ({
  name: 'A',
  days: { kind: 'daily' },
  starts: [300],
  adjustPercent: 100,
  stations: Object.entries(minutesByStation).map(([station, minutes]) => ({
    station: Number(station),
    minutes,
    cycles: 1,
    soakMinutes: 0,
  })),
  ...changes,
});

/** A fact that has been left long before the month. */
export const aFact = (programs: readonly Program[], changes: Partial<SettingsFact> = {}): SettingsFact => ({
  effectiveAt: '2026-01-01T00:00',
  record: 'left',
  state: 'on',
  programs,
  ...changes,
});

/** A controller with these facts. */
export const aController = (facts: readonly SettingsFact[], changes: Partial<AccountController> = {}): AccountController => ({
  id: 'c1',
  traits: plainTraits,
  facts,
  pauses: [],
  ...changes,
});

/** An irrigation meter with these intervals. */
export const aMeter = (intervals: readonly UsageInterval[], changes: Partial<AccountMeter> = {}): AccountMeter => ({
  id: 'm1',
  kind: 'irrigation',
  indoorLitresPerDay: null,
  winterLitresPerDay: null,
  intervals,
  ...changes,
});

/** A volume between two local dates (midnights), by readings unless said otherwise. */
export const anInterval = (from: string, to: string, litres: number, changes: Partial<UsageInterval> = {}): UsageInterval => ({
  fromLocalDay: dayNumberOfDate(from),
  toLocalDay: dayNumberOfDate(to),
  litres,
  sdLitres: 0,
  source: 'readings',
  ...changes,
});

/** Weather from one date up to another, dry and with 5 mm of evapotranspiration a day unless said otherwise. */
export const weather = (from: string, to: string, of: (date: string) => Partial<AccountDay> = () => ({})): AccountDay[] =>
  Array.from({ length: dayNumberOfDate(to) - dayNumberOfDate(from) + 1 }, (_, index) => {
    const date = dateOfDayNumber(dayNumberOfDate(from) + index);
    return { date, etoMm: 5, rainMm: 0, etoRelativeSd: 0.05, ...of(date) };
  });

/**
 * June 2026 of one zone, one controller, one meter, an ordinance: needed 5 mm x 30 d x 100 m2 = 15,000 L, programmed 30 min x 20 L/min x 30 d =
 * 18,000 L, metered 21,000 L.
 */
export const aProperty = (changes: Partial<AccountInput> = {}): AccountInput => ({
  month: '2026-06',
  through: '2026-06-30',
  days: weather('2026-03-03', '2026-06-30'),
  zones: [aZone()],
  controllers: [aController([aFact([aProgram({ 1: 30 })])])],
  meters: [aMeter([anInterval('2026-06-01', '2026-07-01', 21_000)])],
  allowance: { from: 'ordinance', etaf: 0.8, specialLandscapeAreaM2: 0 },
  clockChanges: [],
  ...changes,
});
