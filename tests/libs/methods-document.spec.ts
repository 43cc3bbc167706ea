import { readFileSync } from 'node:fs';
import path from 'node:path';
import { referenceEvapotranspiration } from '@rillbook/agronomy/evapotranspiration/reference-evapotranspiration.js';
import { irrigationNeed, WARM_UP_DAYS } from '@rillbook/agronomy/water-balance/irrigation-need.js';
import { dayOfYear } from '@rillbook/agronomy/weather/day-of-year.js';
import { shareOfInterval } from '@rillbook/metering/intervals/apportion-interval.js';
import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import { squareMetresFromSquareFeet } from '@rillbook/units/area.js';
import { degrees } from '@rillbook/units/angle.js';
import { metres, metresFromFeet, millimetres, millimetresFromInches } from '@rillbook/units/length.js';
import { megajoulesPerSquareMetreDay } from '@rillbook/units/radiation.js';
import { metresPerSecondFromMilesPerHour } from '@rillbook/units/speed.js';
import { celsiusFromFahrenheit } from '@rillbook/units/temperature.js';
import { gallonsFromLitres, litres, litresFromDepth } from '@rillbook/units/volume.js';
import { describe, expect, it } from 'vitest';

// docs/methods.md follows one account of the demonstration by hand. Each of its figures is computed here by the libraries, from the
// demonstration's own files, and must stand in the document.
const top = path.resolve(import.meta.dirname, '../..');
const page = readFileSync(path.join(top, 'docs/methods.md'), 'utf8');
const table = (name: string): readonly (readonly string[])[] =>
  readFileSync(path.join(top, 'apps/api/demo/larkspur-grounds', name), 'utf8')
    .trim()
    .split(/\r?\n/)
    .map((line) => line.split(','));

const STATION = { latitude: degrees(38.071), elevation: metresFromFeet(236) };
const FIRST = dayNumberOfDate('2026-07-01');

const measured = table('weather.csv')
  .filter(([station]) => station === 'Fennel Hollow East')
  .map(([, date, tmax, tmin, , , dew, wind, height, solar, rain]) => ({ date: date!, tmax, tmin, dew, wind, height, solar, rain }));

const number = <Unit>(cell: string | undefined, read: (value: number) => Unit): Unit | null => (cell ? read(Number(cell)) : null);

const etoOf = new Map(
  measured.map((day) => {
    const eto = referenceEvapotranspiration(
      {
        dayOfYear: dayOfYear(day.date),
        tmax: number(day.tmax, celsiusFromFahrenheit),
        tmin: number(day.tmin, celsiusFromFahrenheit),
        rhmax: null,
        rhmin: null,
        dewPoint: number(day.dew, celsiusFromFahrenheit),
        wind: number(day.wind, metresPerSecondFromMilesPerHour),
        windHeight: number(day.height, (feet) => metres(metresFromFeet(feet))),
        solar: number(day.solar, megajoulesPerSquareMetreDay),
        rain: number(day.rain, millimetresFromInches),
        givenEto: null,
      },
      STATION,
    );
    return [dayNumberOfDate(day.date), eto.etoMm] as const;
  }),
);
const july = Array.from({ length: 31 }, (_, day) => etoOf.get(FIRST + day) as number);
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const figure = (value: number): string => Math.round(value).toLocaleString('en-US');
const says = (text: string): void => expect(page.includes(text), `the page must say: ${text}`).toBe(true);

const zones = [
  { name: 'Front lawns, north', squareFeet: 2200, factor: 0.8, du: 0.65, minutes: 17 * 20, gpm: 36.3 },
  { name: 'Front lawns, south', squareFeet: 2500, factor: 0.8, du: 0.65, minutes: 17 * 20, gpm: 41.2 },
  { name: 'Back lawns', squareFeet: 3100, factor: 0.6, du: 0.64, minutes: 17 * 16, gpm: 48.2 },
  { name: 'Row hedge', squareFeet: 1700, factor: 0.5, du: 0.83, minutes: 9 * 87, gpm: 6.6 },
  { name: 'Alders', squareFeet: 1200, factor: 0.8, du: 0.83, minutes: 9 * 110, gpm: 5.9 },
];

const days = (from: number, until: number, of: (day: number) => number): number[] =>
  Array.from({ length: until - from }, (_, at) => of(from + at));
const rainOf = new Map(measured.map(({ date, rain }) => [dayNumberOfDate(date), Number(rain || 0)]));

/** Gallons that a zone needed in July, by the daily balance from 90 days before. The storage does not matter where no rain comes. */
function needed({ squareFeet, factor, du }: (typeof zones)[number]): number {
  const series = (of: (day: number) => number) => days(FIRST - WARM_UP_DAYS, FIRST + 31, of);
  const need = irrigationNeed(
    { eto: series((day) => etoOf.get(day) ?? 0), rain: series((day) => (rainOf.get(day) ?? 0) * 25.4) },
    { plantCoefficient: factor, readilyAvailableWater: millimetres(20) },
    WARM_UP_DAYS,
  );
  const net = litresFromDepth(millimetres(sum([...need.irrigationMm])), squareMetresFromSquareFeet(squareFeet));
  return gallonsFromLitres(litres(net / (0.4 + 0.6 * du)));
}

const MINUTES_A_DAY = 1440;
const at = (date: string, clock: string): number => {
  const [hours, minutes] = clock.split(':').map(Number) as [number, number];
  return dayNumberOfDate(date) + (60 * hours + minutes) / MINUTES_A_DAY;
};
const [june2, july1, august2] = [at('2026-06-02', '12:51'), at('2026-07-01', '12:12'), at('2026-08-02', '13:44')];
const inJuly = (from: number, until: number): number =>
  shareOfInterval([from, until], [Math.max(from, FIRST), Math.min(until, FIRST + 31)], (day) => etoOf.get(day) ?? null);

const volumes = {
  allowed: (sum(july) / 25.4) * 0.62 * 0.8 * sum(zones.map(({ squareFeet }) => squareFeet)),
  needed: sum(zones.map(needed)),
  programmed: sum(zones.map(({ minutes, gpm }) => minutes * gpm)),
  metered: 1000 * ((2166.7 - 2125.4) * inJuly(june2, july1) + (2220.2 - 2166.7) * inJuly(july1, august2)),
};

describe('the page that follows one number by hand', () => {
  it('has the reference evapotranspiration of each day', () => {
    says(`= (1.175 + 0.882) / 0.2909 = **${july[14]!.toFixed(2)} mm**`);
    says(july.map((eto) => eto.toFixed(2)).join(', '));
    says(`**${sum(july).toFixed(2)} mm**, which are ${(sum(july) / 25.4).toFixed(3)} in`);
  });

  it('has each zone, needed and programmed', () => {
    for (const zone of zones) {
      expect(page).toMatch(new RegExp(`\\| ${zone.name} \\| ${figure(zone.squareFeet)} .* \\| ${figure(needed(zone))} \\|`));
      expect(page).toMatch(
        new RegExp(`\\| ${zone.name} \\| .* = ${zone.minutes} \\| ${zone.gpm} \\| ${figure(zone.minutes * zone.gpm)} \\|`),
      );
    }
  });

  it('takes registers, areas, flows and minutes from the demonstration', () => {
    const registers = table('readings.csv').filter(
      ([property, , when]) => property === 'Alder Row' && when! > '2026-06-01' && when! < '2026-08-31',
    );
    expect(registers.map((row) => [row[2], row[3]])).toEqual([
      ['2026-06-02T12:51', '2125.4'],
      ['2026-07-01T12:12', '2166.7'],
      ['2026-08-02T13:44', '2220.2'],
    ]);
    const left = table('settings.csv').filter(([property, , when]) => property === 'Alder Row' && when === '2026-07-01T12:08');
    expect(left.map((row) => `${row[6]} ${row[7]} ${row[10]}`)).toEqual([
      'Mon Tue Thu Sat 05:00 20',
      'Mon Tue Thu Sat 05:00 20',
      'Mon Tue Thu Sat 05:00 16',
      'Mon Fri 06:00 87',
      'Mon Fri 06:00 110',
    ]);
    expect(sum(days(FIRST, FIRST + 31, (day) => rainOf.get(day) ?? 0))).toBe(0);
  });

  it('has the four volumes and the gaps between them', () => {
    says(`Together **${figure(volumes.needed)} gal**.`);
    says(`Together **${figure(volumes.programmed)} gal**.`);
    says(`Together **${figure(volumes.metered)} gal**.`);
    says(`= **${figure(volumes.allowed)} gal**`);
    says(`| landscape: needed less allowed | ${figure(volumes.needed - volumes.allowed)} |`);
    says(`| settings: programmed less needed | ${figure(volumes.programmed - volumes.needed)} |`);
    says(`| unexplained: metered less programmed | ${figure(volumes.metered - volumes.programmed)} |`);
    says(`| metered less allowed | ${figure(volumes.metered - volumes.allowed)} |`);
  });

  it('has the standard deviation of programmed', () => {
    says(`= **${figure(0.15 * Math.hypot(...zones.map(({ minutes, gpm }) => minutes * gpm)))} gal**`);
  });
});
