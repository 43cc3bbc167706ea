// A whole day on a phone without signal, and a bad line at its end: the built product, its PostgreSQL, and a Chromium that is started again.
import { runOnPhones } from './phones/run.mjs';

export const readsShared = false;

export const prove = async () => runOnPhones('tests/prove/phones/offline-day.spec.ts');
