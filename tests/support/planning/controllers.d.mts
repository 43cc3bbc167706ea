import type { PlanInput } from '@rillbook/irrigation/planning/plan-input.js';

/** A repeatable source of numbers from 0 to 1. */
export function numbersFrom(seed: number): () => number;

/** One controller and month, invented. */
export function inventedController(seed: number, most?: { readonly mostZones?: number; readonly mostPrograms?: number }): PlanInput;
