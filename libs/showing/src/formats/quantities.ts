import { squareFeetFromSquareMetres, squareMetres, squareMetresFromSquareFeet } from '@rillbook/units/area.js';
import {
  inchesPerHourFromMillimetresPerHour,
  millimetresPerHour,
  millimetresPerHourFromInchesPerHour,
} from '@rillbook/units/depth-rate.js';
import {
  gallonsPerHourFromLitresPerMinute,
  gallonsPerMinuteFromLitresPerMinute,
  litresPerHourFromLitresPerMinute,
  litresPerMinute,
  litresPerMinuteFromGallonsPerHour,
  litresPerMinuteFromGallonsPerMinute,
  litresPerMinuteFromLitresPerHour,
} from '@rillbook/units/flow.js';
import {
  feetFromMetres,
  inchesFromMillimetres,
  metres,
  metresFromFeet,
  millimetres,
  millimetresFromInches,
} from '@rillbook/units/length.js';
import { kilopascals, kilopascalsFromPsi, psiFromKilopascals } from '@rillbook/units/pressure.js';
import { metresPerSecond, metresPerSecondFromMilesPerHour, milesPerHourFromMetresPerSecond } from '@rillbook/units/speed.js';
import { celsius, celsiusFromFahrenheit, fahrenheitFromCelsius } from '@rillbook/units/temperature.js';
import { litres, litresFrom, volumeIn } from '@rillbook/units/volume.js';
import type { UnitWord } from '../words/en/units.js';

export type UnitSystem = 'us' | 'metric';
export type QuantityKind = 'volume' | 'area' | 'depth' | 'length' | 'flow' | 'emitterFlow' | 'rate' | 'temperature' | 'pressure' | 'speed';

/** How one kind of quantity is shown and typed in one system; what is stored is always SI. */
export interface ShownIn {
  readonly unit: UnitWord;
  readonly decimals: number;
  /** More of them for what is smaller than one unit: a leak of a quarter gallon a minute is not three tenths. */
  readonly decimalsBelowOne?: number;
  readonly fromSi: (value: number) => number;
  readonly toSi: (value: number) => number;
}

const same = (value: number): number => value;
const asStored = (unit: UnitWord, decimals: number): ShownIn => ({ unit, decimals, fromSi: same, toSi: same });

/** Litres, m², mm, m, L/min, mm/h, °C, kPa and m/s as a person of each system reads them. */
export const quantities: Readonly<Record<QuantityKind, Readonly<Record<UnitSystem, ShownIn>>>> = {
  volume: {
    us: { unit: 'unit.gal', decimals: 0, fromSi: (value) => volumeIn(litres(value), 'gal'), toSi: (value) => litresFrom(value, 'gal') },
    metric: { unit: 'unit.m3', decimals: 1, fromSi: (value) => volumeIn(litres(value), 'm3'), toSi: (value) => litresFrom(value, 'm3') },
  },
  area: {
    us: {
      unit: 'unit.ft2',
      decimals: 0,
      fromSi: (value) => squareFeetFromSquareMetres(squareMetres(value)),
      toSi: squareMetresFromSquareFeet,
    },
    metric: asStored('unit.m2', 0),
  },
  depth: {
    us: { unit: 'unit.in', decimals: 2, fromSi: (value) => inchesFromMillimetres(millimetres(value)), toSi: millimetresFromInches },
    metric: asStored('unit.mm', 1),
  },
  length: {
    us: { unit: 'unit.ft', decimals: 0, fromSi: (value) => feetFromMetres(metres(value)), toSi: metresFromFeet },
    metric: asStored('unit.m', 0),
  },
  flow: {
    us: {
      unit: 'unit.gpm',
      decimals: 1,
      decimalsBelowOne: 2,
      fromSi: (value) => gallonsPerMinuteFromLitresPerMinute(litresPerMinute(value)),
      toSi: litresPerMinuteFromGallonsPerMinute,
    },
    metric: asStored('unit.lPerMin', 1),
  },
  emitterFlow: {
    us: {
      unit: 'unit.gph',
      decimals: 2,
      fromSi: (value) => gallonsPerHourFromLitresPerMinute(litresPerMinute(value)),
      toSi: litresPerMinuteFromGallonsPerHour,
    },
    metric: {
      unit: 'unit.lPerH',
      decimals: 1,
      fromSi: (value) => litresPerHourFromLitresPerMinute(litresPerMinute(value)),
      toSi: litresPerMinuteFromLitresPerHour,
    },
  },
  rate: {
    us: {
      unit: 'unit.inPerH',
      decimals: 2,
      fromSi: (value) => inchesPerHourFromMillimetresPerHour(millimetresPerHour(value)),
      toSi: millimetresPerHourFromInchesPerHour,
    },
    metric: asStored('unit.mmPerH', 1),
  },
  temperature: {
    us: { unit: 'unit.fahrenheit', decimals: 0, fromSi: (value) => fahrenheitFromCelsius(celsius(value)), toSi: celsiusFromFahrenheit },
    metric: asStored('unit.celsius', 0),
  },
  pressure: {
    us: { unit: 'unit.psi', decimals: 0, fromSi: (value) => psiFromKilopascals(kilopascals(value)), toSi: kilopascalsFromPsi },
    metric: asStored('unit.kpa', 0),
  },
  speed: {
    us: {
      unit: 'unit.mph',
      decimals: 1,
      fromSi: (value) => milesPerHourFromMetresPerSecond(metresPerSecond(value)),
      toSi: metresPerSecondFromMilesPerHour,
    },
    metric: asStored('unit.mPerS', 1),
  },
};
