import type { Program } from '@rillbook/irrigation/settings/settings-fact.js';
import { clockOfMinutes } from './clock-time.js';
import type { KeptProgram } from './kept-program.js';
import { wordsOfDays } from './program-days.js';

/** A program in the words that its row keeps. */
export const keepProgram = ({ name, days, starts, adjustPercent, stations }: Program): KeptProgram => ({
  name,
  days: wordsOfDays(days),
  starts: starts.map(clockOfMinutes),
  adjustPercent,
  stations: stations.map(({ station, minutes, cycles, soakMinutes }) => ({ station, minutes, cycles, soakMinutes })),
});
