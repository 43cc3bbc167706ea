import { createHash } from 'node:crypto';

/** Goes up when the same inputs give other accounts: then all are computed anew. */
const METHOD = 2;

/** The fingerprint of everything an account is computed from, and of the way it is computed. */
export const inputsVersion = (inputs: unknown): string =>
  createHash('sha256')
    .update(JSON.stringify([METHOD, inputs]))
    .digest('base64url')
    .slice(0, 22);
