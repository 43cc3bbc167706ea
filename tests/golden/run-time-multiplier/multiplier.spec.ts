import { runTimeMultiplier } from '@rillbook/irrigation/hardware/uniformity/run-time-multiplier.js';
import { it } from 'vitest';
import { expectGolden, given, type GoldenCheck } from '../golden-check.js';
import { checks } from './values.js';

it.each(Object.entries<GoldenCheck>(checks))('%s', (_, check) => {
  expectGolden(check, { RTM: runTimeMultiplier(given(check, 'DU_LQ')) });
});
