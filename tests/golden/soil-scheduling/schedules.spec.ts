import { wateringDepthBySize, wateringDepthRange } from '@rillbook/agronomy/plants/watering-depth-range.js';
import { rootDepth } from '@rillbook/agronomy/plants/root-depth.js';
import { allowableSurfaceAccumulation } from '@rillbook/agronomy/soil/allowable-surface-accumulation.js';
import { availableWater } from '@rillbook/agronomy/soil/available-water.js';
import { availableWaterRange, type TextureGroup, textureGroupOf } from '@rillbook/agronomy/soil/available-water-range.js';
import { basicIntakeRate } from '@rillbook/agronomy/soil/basic-intake-rate.js';
import { soilTextures } from '@rillbook/agronomy/soil/soil-texture.js';
import { cycleLimit } from '@rillbook/irrigation/hardware/run-time/cycle-limit.js';
import { baseMinutes, minutesPerAllowedDay, multipliedMinutes } from '@rillbook/irrigation/hardware/run-time/run-minutes.js';
import { schedulingCoefficient } from '@rillbook/irrigation/hardware/uniformity/scheduling-coefficient.js';
import {
  inchesPerHourFromMillimetresPerHour,
  millimetresPerHour,
  millimetresPerHourFromInchesPerHour,
} from '@rillbook/units/depth-rate.js';
import { feetFromMetres, inchesFromMillimetres, metres, millimetres, millimetresFromInches } from '@rillbook/units/length.js';
import type { Quantity } from '@rillbook/units/quantity.js';
import { expect, it } from 'vitest';
import { expectGolden, given, givenRow, type GoldenCheck, type GoldenValue } from '../golden-check.js';
import { checks } from './values.js';

type Computed = Readonly<Record<string, GoldenValue>>;

/** Conversions there and back leave floating-point dust behind the twelfth digit. */
const dusted = (value: number) => Number(value.toPrecision(12));
const inches = (depth: Quantity<'mm'>) => dusted(inchesFromMillimetres(depth));
/** Inches of water per foot of soil, from mm per m: both are ratios, a foot has 12 inches. */
const inchesPerFoot = (water: Quantity<'mm/m'>) => dusted((water / 1000) * 12);
const rate = millimetresPerHourFromInchesPerHour;

const waterOf = (group: TextureGroup) => {
  const { from, to } = availableWaterRange(group);
  return { low: inchesPerFoot(from), high: inchesPerFoot(to) };
};
const availableWaterOf = (check: GoldenCheck): Computed => {
  const { low, high } = waterOf(String(check.inputs['texture']?.[0]) as TextureGroup);
  return { AWHC_low: low, AWHC_high: high };
};
const accumulationOf = (check: GoldenCheck): Computed => {
  const intake = given(check, 'basic_intake_rate');
  const texture = soilTextures.find((each) => dusted(inchesPerHourFromMillimetresPerHour(basicIntakeRate(each))) === intake);
  expect(texture, `no texture takes ${intake} in/h`).toBeDefined();
  return { ASA: texture ? inches(allowableSurfaceAccumulation(texture, 3)) : 'none' };
};
const range = (plants: Parameters<typeof wateringDepthRange>[0]) => {
  const { from, to } = wateringDepthRange(plants);
  return `${inches(from)}-${inches(to)}`;
};

const computed: Readonly<Record<keyof typeof checks, (check: GoldenCheck) => Computed>> = {
  'ss-000': availableWaterOf,
  'ss-002': availableWaterOf,
  'ss-003': availableWaterOf,
  'ss-005': availableWaterOf,
  'ss-006': () => {
    const { low, high } = waterOf('sandy clay loam, loam, silt loam by feel');
    return { AWC_low: low, AWC_high: high };
  },
  'ss-010': accumulationOf,
  'ss-011': accumulationOf,
  'ss-013': accumulationOf,
  'ss-014': accumulationOf,
  'ss-016': accumulationOf,
  'ss-017': (check) => {
    const limit = cycleLimit(millimetresFromInches(given(check, 'ASA')), rate(given(check, 'PR')), rate(given(check, 'IR')));
    return { RTmax: limit ?? 'no limit' };
  },
  'ss-062': (check) => {
    const coefficient = schedulingCoefficient(given(check, 'mean_rate'), given(check, 'min_rate'));
    const base = baseMinutes(millimetres(given(check, 'need')), millimetresPerHour(given(check, 'mean_rate')));
    return { SC: coefficient, run: multipliedMinutes(base, coefficient) / 60 };
  },
  'ss-067': () => {
    const sizes = ['small plants', 'shrubs', 'trees'] as const;
    return { depth: sizes.map((size) => `${dusted(feetFromMetres(metres(wateringDepthBySize(size) / 1000)))} ft`).join(' | ') };
  },
  'ss-068': () => ({ depth_in: (['trees', 'shrubs', 'groundcover, cacti, annuals', 'grass'] as const).map(range).join(' | ') }),
  'coarse-and-fine-sands': availableWaterOf,
  'clay-loams': availableWaterOf,
  'three-days-a-week': (check) => {
    const perDay = baseMinutes(millimetresFromInches(given(check, 'need')), rate(given(check, 'PR')));
    const perAllowedDay = minutesPerAllowedDay(perDay, given(check, 'days'));
    return { per_day: perDay, per_week: perAllowedDay * given(check, 'days'), per_allowed_day: perAllowedDay };
  },
  'half-an-inch': (check) => {
    const depth = millimetresFromInches(given(check, 'depth'));
    return { run: givenRow(check, 'PR').map((each) => baseMinutes(depth, rate(each))) };
  },
};

it.each(Object.entries(computed))('%s', (id, compute) => {
  const check: GoldenCheck = checks[id as keyof typeof checks];
  expectGolden(check, compute(check));
});

it.each(soilTextures)('what is taken for %s lies within the published range of its group, or of very coarse sand', (texture) => {
  const { from, to } = availableWaterRange(textureGroupOf(texture));
  const lowest = texture === 'sand' ? availableWaterRange('very coarse sands').from : from;
  expect(availableWater(texture)).toBeGreaterThanOrEqual(lowest);
  expect(availableWater(texture)).toBeLessThanOrEqual(to);
});

it.each([
  ['trees', 'trees'],
  ['shrubs', 'shrubs'],
  ['groundcover', 'groundcover, cacti, annuals'],
  ['annuals', 'groundcover, cacti, annuals'],
  ['turf cool-season', 'grass'],
] as const)('the root depth assumed for %s lies within the guideline for %s', (plants, group) => {
  const { from, to } = wateringDepthRange(group);
  const assumed = rootDepth(null, plants).rootDepth;
  expect(assumed).toBeGreaterThanOrEqual(from);
  expect(assumed).toBeLessThanOrEqual(to);
});
