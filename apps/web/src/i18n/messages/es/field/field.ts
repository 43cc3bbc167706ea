import { stop } from './stop.js';

/** The words of field work. */
export const field = { ...stop };
