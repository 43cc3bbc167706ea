import { digest, fingerprint } from '../gather/fingerprint.js';

/** Goes up when the same inputs give other accounts: then all are computed anew. */
const METHOD = 9;

/** The fingerprint of everything an account is computed from, and of the way it is computed. */
export const inputsVersion = (inputs: readonly unknown[]): string => digest([METHOD, ...inputs.map(fingerprint)].join('\n'));
