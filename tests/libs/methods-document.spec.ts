import { readFileSync } from 'node:fs';
import path from 'node:path';
import { referenceEvapotranspiration } from '@rillbook/agronomy/evapotranspiration/reference-evapotranspiration.js';
import { irrigationNeed, WARM_UP_DAYS } from '@rillbook/agronomy/water-balance/irrigation-need.js';
import { atmosphericPressure } from '@rillbook/agronomy/evapotranspiration/air/atmospheric-pressure.js';
import { windSpeedAt2M } from '@rillbook/agronomy/evapotranspiration/air/wind-speed-at-2-m.js';
import { standardizedClearSkyRadiation, standardizedTerms } from '@rillbook/agronomy/evapotranspiration/methods/standardized-terms.js';
import {
  diffuseClearness,
  directBeamClearness,
  precipitableWater,
} from '@rillbook/agronomy/evapotranspiration/radiation/clear-sky-radiation-of-humid-air.js';
import { cloudinessFactor } from '@rillbook/agronomy/evapotranspiration/radiation/cloudiness-factor.js';
import { standardizedNetLongwaveRadiation } from '@rillbook/agronomy/evapotranspiration/radiation/net-longwave-radiation.js';
import { netShortwaveRadiation } from '@rillbook/agronomy/evapotranspiration/radiation/net-radiation.js';
import { extraterrestrialRadiation } from '@rillbook/agronomy/evapotranspiration/sun/extraterrestrial-radiation.js';
import { inverseRelativeDistance } from '@rillbook/agronomy/evapotranspiration/sun/inverse-relative-distance.js';
import { sineOfMeanSunAngle } from '@rillbook/agronomy/evapotranspiration/sun/sine-of-mean-sun-angle.js';
import { solarDeclination } from '@rillbook/agronomy/evapotranspiration/sun/solar-declination.js';
import { sunsetHourAngle } from '@rillbook/agronomy/evapotranspiration/sun/sunset-hour-angle.js';
import { vapourPressureFromDewPoint } from '@rillbook/agronomy/evapotranspiration/vapour/vapour-pressure-from-dew-point.js';
import { dayOfYear } from '@rillbook/agronomy/weather/day-of-year.js';
import { shareOfInterval } from '@rillbook/metering/intervals/apportion-interval.js';
import { programStartsOn } from '@rillbook/irrigation/settings/replay/program-starts-on.js';
import type { Weekday } from '@rillbook/irrigation/settings/settings-fact.js';
import { dayNumberOfDate } from '@rillbook/irrigation/calendar/local-date.js';
import { squareMetresFromSquareFeet } from '@rillbook/units/area.js';
import { degrees, radiansFromDegrees } from '@rillbook/units/angle.js';
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

/** The result cells of the table whose row begins so, as numbers. */
const resultsOf = (step: string): readonly number[] => {
  const row = page.split('\n').find((line) => line.startsWith(`| ${step} |`)) ?? '';
  return (
    row
      .split('|')
      .at(-2)
      ?.match(/\d+\.\d+/g) ?? []
  ).map(Number);
};
const decimals = (value: number): number => String(value).split('.')[1]?.length ?? 0;

describe('the page that follows one number by hand', () => {
  it('has every step of the fifteenth of July', () => {
    const [tmax, tmin, dewPoint] = [celsiusFromFahrenheit(91.8), celsiusFromFahrenheit(58), celsiusFromFahrenheit(50.4)];
    const site = { latitude: STATION.latitude, elevation: STATION.elevation };
    const vapourPressure = vapourPressureFromDewPoint(dewPoint);
    const windSpeed = windSpeedAt2M(metresPerSecondFromMilesPerHour(5), metresFromFeet(10));
    const solarRadiation = megajoulesPerSquareMetreDay(30.19);
    const day = {
      dayOfYear: 196,
      maximumTemperature: tmax,
      minimumTemperature: tmin,
      vapourPressure,
      windSpeedAt2M: windSpeed,
      solarRadiation,
    };
    const terms = standardizedTerms(day, site);
    const clearSky = standardizedClearSkyRadiation(day, site);
    const cloudiness = cloudinessFactor(solarRadiation, clearSky);
    const declination = solarDeclination(196);
    const pressure = atmosphericPressure(STATION.elevation);
    const water = precipitableWater(vapourPressure, pressure);
    const sineOfSunAngle = sineOfMeanSunAngle(STATION.latitude, 196);
    const beam = directBeamClearness({ pressure, vapourPressure, sineOfSunAngle });
    const steps: readonly (readonly [string, readonly number[]])[] = [
      ['temperatures', [tmax, tmin, dewPoint, terms.meanTemperature]],
      ['wind at 2 m', [windSpeed]],
      ['air pressure', [pressure]],
      ['psychrometric constant', [terms.psychrometricConstant]],
      ['saturation vapour pressure', [terms.saturationVapourPressure]],
      ['vapour pressure', [vapourPressure]],
      ['slope', [terms.vapourPressureSlope]],
      [
        'sun by day and latitude',
        [inverseRelativeDistance(196), declination, radiansFromDegrees(STATION.latitude), sunsetHourAngle(STATION.latitude, declination)],
      ],
      ['radiation above the air', [extraterrestrialRadiation(STATION.latitude, 196)]],
      ['clear sky, the full method of Appendix D', [sineOfSunAngle]],
      ['clear sky', [clearSky]],
      ['cloudiness', [cloudiness]],
      ['light kept', [netShortwaveRadiation(solarRadiation)]],
      ['heat lost', [standardizedNetLongwaveRadiation(day, vapourPressure, cloudiness)]],
      ['net radiation', [terms.netRadiation]],
    ];
    for (const [step, values] of steps) {
      const printed = resultsOf(step);
      expect(printed.length, step).toBe(values.length);
      // One unit of the last digit: each step goes on with the figures that the page prints.
      printed.forEach((figure, at) =>
        expect(Math.abs(figure - values[at]!), `${step} ${figure}`).toBeLessThanOrEqual(1.01 * 10 ** -decimals(figure)),
      );
    }
    says(`| ${water.toFixed(1)}`);
    says(`| ${beam.toFixed(3)}; ${diffuseClearness(beam).toFixed(3)} |`);
  });

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
    // A calculator gives each line from the figures that the page prints, to the gallon.
    const [, inches] = /lawn, ([\d.]+) in\./.exec(page) as RegExpExecArray;
    const [, gallonsPerInch] = /square foot is ([\d.]+) gal/.exec(page) as RegExpExecArray;
    for (const zone of zones) {
      const net = zone.squareFeet * Number(inches) * (zone.factor / 0.8) * Number(gallonsPerInch);
      expect(figure(net / (0.4 + 0.6 * zone.du))).toBe(figure(needed(zone)));
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
    says(`Together **${figure(volumes.metered)} gal** (`);
    says(`= **${figure(volumes.allowed)} gal**`);
    says(`| landscape: needed less allowed | ${figure(volumes.needed - volumes.allowed)} |`);
    says(`| settings: programmed less needed | ${figure(volumes.programmed - volumes.needed)} |`);
    says(`| unexplained: metered less programmed | ${figure(volumes.metered - volumes.programmed)} |`);
    says(`| metered less allowed | ${figure(volumes.metered - volumes.allowed)} |`);
  });

  it('has the starts of the month, from the second on', () => {
    const starts = (...weekdays: Weekday[]) =>
      days(FIRST + 1, FIRST + 31, (day) => Number(programStartsOn({ kind: 'weekdays', weekdays }, day))).reduce((all, one) => all + one);
    says(`program A started ${starts('Mon', 'Tue', 'Thu', 'Sat')} times, program B ${starts('Mon', 'Fri')} times`);
  });

  it('has the evapotranspiration by which the readings are divided', () => {
    const depth = (from: number, until: number): number =>
      [...etoOf].reduce((all, [day, eto]) => all + (eto ?? 0) * Math.max(0, Math.min(until, day + 1) - Math.max(from, day)), 0);
    const lines = [
      [41.3, depth(june2, july1), depth(FIRST, july1)],
      [53.5, depth(july1, august2), depth(july1, FIRST + 31)],
    ] as const;
    for (const [gallons, whole, ofJuly] of lines) {
      says(`${gallons} thousand gallons, ${whole.toFixed(2)} mm, of which ${ofJuly.toFixed(2)} mm`);
      says(`To July: ${gallons} · ${ofJuly.toFixed(2)} / ${whole.toFixed(2)} = ${((gallons * ofJuly) / whole).toFixed(3)}.`);
    }
  });

  it('fills a day whose rain nobody knows by its evapotranspiration', () => {
    const [needed, eto, day] = [171, 214, 7.07];
    says(
      `needed ${needed} mm of ${eto} mm ETo, a day of ${day} mm ETo needed ${needed} / ${eto} · ${day} = ${((needed / eto) * day).toFixed(2)} mm`,
    );
    const others = sum(july.filter((_, at) => at !== 14));
    expect([july[14]!.toFixed(2), Math.round(others), Math.round(0.8 * others)]).toEqual([String(day), eto, needed]);
  });

  it('has the standard deviation of programmed', () => {
    says(`= **${figure(0.15 * Math.hypot(...zones.map(({ minutes, gpm }) => minutes * gpm)))} gal**`);
  });
});
