import type { Program } from '@rillbook/irrigation/settings/settings-fact.js';
import { minutesOfClock } from './programs/clock-time.js';
import type { KeptProgram } from './programs/kept-program.js';
import { programDaysOf } from './programs/program-days.js';

const AS_SET_PERCENT = 100;

/** A kept program as it is replayed: what nobody has said is 100 %, one cycle, no soak. */
export function programFromKept(kept: KeptProgram): Program {
  const days = programDaysOf(kept.days);
  if (!days) throw new TypeError(`a kept program has the days ${JSON.stringify(kept.days)}`);
  return {
    name: kept.name,
    days,
    starts: kept.starts.map((start) => {
      const minutes = minutesOfClock(start);
      if (minutes === null) throw new TypeError(`a kept program has the start ${JSON.stringify(start)}`);
      return minutes;
    }),
    adjustPercent: kept.adjustPercent ?? AS_SET_PERCENT,
    stations: kept.stations.map(({ station, minutes, cycles, soakMinutes }) => ({
      station,
      minutes,
      cycles: cycles ?? 1,
      soakMinutes: soakMinutes ?? 0,
    })),
  };
}
