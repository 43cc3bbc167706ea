import type { Wish } from './simulated-meter.mjs';

export function healthyWish(seed: number): Wish;
