import { degrees, degreesFromRadians, radians, radiansFromDegrees } from '@rillbook/units/angle.js';
import {
  squareFeetFromSquareMetres,
  squareInchesFromSquareMetres,
  squareMetres,
  squareMetresFromSquareFeet,
  squareMetresFromSquareInches,
} from '@rillbook/units/area.js';
import {
  inchesPerHourFromMillimetresPerHour,
  millimetresPerHour,
  millimetresPerHourFromInchesPerHour,
} from '@rillbook/units/depth-rate.js';
import { DomainError } from '@rillbook/units/domain-error.js';
import {
  gallonsPerHourFromLitresPerMinute,
  gallonsPerMinuteFromLitresPerMinute,
  litresPerHourFromLitresPerMinute,
  litresPerMinute,
  litresPerMinuteFromGallonsPerHour,
  litresPerMinuteFromGallonsPerMinute,
  litresPerMinuteFromLitresPerHour,
  litresPerMinuteFromLitresPerSecond,
  litresPerSecondFromLitresPerMinute,
} from '@rillbook/units/flow.js';
import {
  feetFromMetres,
  inchesFromMillimetres,
  metres,
  metresFromFeet,
  millimetres,
  millimetresFromInches,
  millimetresFromMetres,
} from '@rillbook/units/length.js';
import { kilopascals, kilopascalsFromPsi, psiFromKilopascals } from '@rillbook/units/pressure.js';
import {
  langleysFromMegajoulesPerSquareMetreDay,
  langleysFromMegajoulesPerSquareMetreHour,
  megajoulesPerSquareMetreDay,
  megajoulesPerSquareMetreDayFromLangleys,
  megajoulesPerSquareMetreHour,
  megajoulesPerSquareMetreHourFromLangleys,
} from '@rillbook/units/radiation.js';
import {
  kilometresPerHourFromMetresPerSecond,
  metresPerSecond,
  metresPerSecondFromKilometresPerHour,
  metresPerSecondFromMilesPerHour,
  milesPerHourFromMetresPerSecond,
} from '@rillbook/units/speed.js';
import { celsius, celsiusFromFahrenheit, fahrenheitFromCelsius, kelvinFromCelsius } from '@rillbook/units/temperature.js';
import {
  isVolumeUnit,
  litres,
  litresFrom,
  litresFromGallons,
  type OtherVolumeUnit,
  type VolumeUnit,
  volumeIn,
  volumeUnits,
} from '@rillbook/units/volume.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

/** Sizes that water and weather come in; numbers below them only show the end of the machine's digits. */
const number = fc.double({ min: -1e6, max: 1e9, noNaN: true }).filter((value) => value === 0 || Math.abs(value) > 1e-12);

const otherVolumeUnits: readonly OtherVolumeUnit[] = ['acre-ft', 'acre-in', 'imperial gal', 'mL'];

/** Values of one unit, there and back again. */
const roundTrips: readonly [string, (value: number) => number][] = [
  ['in and mm', (value) => inchesFromMillimetres(millimetresFromInches(value))],
  ['ft and m', (value) => feetFromMetres(metresFromFeet(value))],
  ['in2 and m2', (value) => squareInchesFromSquareMetres(squareMetresFromSquareInches(value))],
  ['ft2 and m2', (value) => squareFeetFromSquareMetres(squareMetresFromSquareFeet(value))],
  ['gpm and L/min', (value) => gallonsPerMinuteFromLitresPerMinute(litresPerMinuteFromGallonsPerMinute(value))],
  ['gph and L/min', (value) => gallonsPerHourFromLitresPerMinute(litresPerMinuteFromGallonsPerHour(value))],
  ['L/h and L/min', (value) => litresPerHourFromLitresPerMinute(litresPerMinuteFromLitresPerHour(value))],
  ['L/s and L/min', (value) => litresPerSecondFromLitresPerMinute(litresPerMinuteFromLitresPerSecond(value))],
  ['in/h and mm/h', (value) => inchesPerHourFromMillimetresPerHour(millimetresPerHourFromInchesPerHour(value))],
  ['psi and kPa', (value) => psiFromKilopascals(kilopascalsFromPsi(value))],
  ['mph and m/s', (value) => milesPerHourFromMetresPerSecond(metresPerSecondFromMilesPerHour(value))],
  ['° and rad', (value) => degreesFromRadians(radiansFromDegrees(degrees(value)))],
  ['km/h and m/s', (value) => kilometresPerHourFromMetresPerSecond(metresPerSecondFromKilometresPerHour(value))],
  ['langley an hour and MJ/m2', (value) => langleysFromMegajoulesPerSquareMetreHour(megajoulesPerSquareMetreHourFromLangleys(value))],
  ['langley and MJ/m2', (value) => langleysFromMegajoulesPerSquareMetreDay(megajoulesPerSquareMetreDayFromLangleys(value))],
  ...[...volumeUnits, ...otherVolumeUnits].map((unit): [string, (value: number) => number] => [
    `${unit} and L`,
    (value) => volumeIn(litresFrom(value, unit), unit),
  ]),
];

const constructors: readonly [string, (value: number) => number, string][] = [
  ['degrees', degrees, 'ANGLE_OUT_OF_DOMAIN'],
  ['radians', radians, 'ANGLE_OUT_OF_DOMAIN'],
  ['squareMetres', squareMetres, 'AREA_OUT_OF_DOMAIN'],
  ['millimetresPerHour', millimetresPerHour, 'DEPTH_RATE_OUT_OF_DOMAIN'],
  ['litresPerMinute', litresPerMinute, 'FLOW_OUT_OF_DOMAIN'],
  ['metres', metres, 'LENGTH_OUT_OF_DOMAIN'],
  ['millimetres', millimetres, 'LENGTH_OUT_OF_DOMAIN'],
  ['kilopascals', kilopascals, 'PRESSURE_OUT_OF_DOMAIN'],
  ['megajoulesPerSquareMetreDay', megajoulesPerSquareMetreDay, 'RADIATION_OUT_OF_DOMAIN'],
  ['megajoulesPerSquareMetreHour', megajoulesPerSquareMetreHour, 'RADIATION_OUT_OF_DOMAIN'],
  ['metresPerSecond', metresPerSecond, 'SPEED_OUT_OF_DOMAIN'],
  ['celsius', celsius, 'TEMPERATURE_OUT_OF_DOMAIN'],
  ['litres', litres, 'VOLUME_OUT_OF_DOMAIN'],
];

/** The code with which a deed refuses, or null when it does not. */
const refusal = (deed: () => unknown): string | null => {
  try {
    deed();
    return null;
  } catch (problem) {
    if (problem instanceof DomainError) return problem.code;
    throw problem;
  }
};

describe('units', () => {
  it.each(roundTrips)('%s come back within a million-millionth', (_, thereAndBack) => {
    fc.assert(
      fc.property(number, (value) => {
        expect(Math.abs(thereAndBack(value) - value)).toBeLessThanOrEqual(1e-12 * Math.abs(value));
      }),
    );
  });

  it('°F come back from °C within a million-millionth of the distance from absolute zero', () => {
    const absoluteZero = -459.67;
    fc.assert(
      fc.property(fc.double({ min: -400, max: 1e4, noNaN: true }), (value) => {
        const off = Math.abs(fahrenheitFromCelsius(celsiusFromFahrenheit(value)) - value);
        expect(off).toBeLessThanOrEqual(1e-12 * (value - absoluteZero));
      }),
    );
  });

  it.each(constructors)('%s keeps a finite number and refuses the rest by code', (_, make, code) => {
    expect(make(12.5)).toBe(12.5);
    for (const bad of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) expect(refusal(() => make(bad))).toBe(code);
  });

  it('knows the fixed points of temperature (definitions)', () => {
    expect(celsiusFromFahrenheit(212)).toBe(100);
    expect(celsiusFromFahrenheit(32)).toBe(0);
    expect(kelvinFromCelsius(celsius(0))).toBe(273.15);
    expect(refusal(() => celsius(-274))).toBe('TEMPERATURE_OUT_OF_DOMAIN');
  });

  it('turns half a circle into π and a metre into a thousand millimetres', () => {
    expect(radiansFromDegrees(degrees(180))).toBe(Math.PI);
    expect(millimetresFromMetres(metres(1))).toBe(1000);
  });

  it('reads the units of a meter exactly as the import folder spells them', () => {
    expect(volumeUnits.every((unit) => isVolumeUnit(unit))).toBe(true);
    expect(isVolumeUnit('ccf')).toBe(false);
    expect(otherVolumeUnits.some((unit) => isVolumeUnit(unit))).toBe(false);
    expect(refusal(() => litresFrom(1, 'barrel' as VolumeUnit))).toBe('VOLUME_UNIT_UNKNOWN');
    expect(litresFromGallons(2)).toBe(litresFrom(2, 'gal'));
  });

  it('says which value it refused', () => {
    try {
      millimetres(Number.NaN);
      expect.unreachable();
    } catch (problem) {
      expect(problem).toMatchObject({ code: 'LENGTH_OUT_OF_DOMAIN', details: { value: Number.NaN } });
    }
  });
});
