// The histories of outbox-model against the real stack: the built server, its PostgreSQL, and the phone's own code in Chromium.
// `npm run prove -- outbox-real [HISTORIES] [SEED]`.
import { runOnPhones } from './phones/run.mjs';

const HISTORIES = 500;

export const readsShared = false;

export async function prove([count = String(HISTORIES), seed = String(Math.floor(Date.now() / 1000))] = []) {
  return runOnPhones('tests/prove/phones/outbox-real.spec.ts', { RILLBOOK_HISTORIES: count, RILLBOOK_SEED: seed });
}
