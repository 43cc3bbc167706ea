import { expect } from 'vitest';

/** Demands that a number lies within an absolute tolerance of the published one, and says both when not. */
export function expectWithin(actual: number, published: number, tolerance: number): void {
  const off = Math.abs(actual - published);
  expect(off <= tolerance, `${actual} is ${off} away from the published ${published} (allowed ${tolerance})`).toBe(true);
}
