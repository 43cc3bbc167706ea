import { exchange } from './exchange.js';

/** The words of the pages of Setup. */
export const setup = { ...exchange };
