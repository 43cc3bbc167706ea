import { digest, fingerprint } from '../gather/fingerprint.js';

/** Goes up when the same inputs give other accounts: then all are computed anew. */
const METHOD = 10;

/** The fingerprint of everything an account is computed from: what it alone has, and what it shares with other months; and of the way it is computed. */
export const inputsVersion = (own: unknown, shared: readonly unknown[]): string =>
  digest([METHOD, JSON.stringify(own), ...shared.map(fingerprint)].join('\n'));
