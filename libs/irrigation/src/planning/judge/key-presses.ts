import { sameDays } from '../../settings/settings-differences.js';
import type { Program } from '../../settings/settings-fact.js';
import { pressesBetween, stationNow } from '../pricing/run-setting.js';

/**
 * Key presses from the programs that are set to those wanted: what a person has to enter, each entry once.
 *
 * Days, each start, the percent, and of every station its minutes, cycles and soak count one where they change; a program that is no longer
 * wanted costs its starts or its stations, whichever is less.
 *
 * @param present - The programs as set now; null where nobody knows: then everything is entered. [code]
 * @param wanted - The programs wanted. [code]
 * @returns How many. [–]
 */
export function keyPresses(present: readonly Program[] | null, wanted: readonly Program[]): number {
  const now = present ?? [];
  const entered = wanted.map((program) =>
    pressesOf(
      now.find(({ name }) => name === program.name),
      program,
    ),
  );
  const cleared = now
    .filter(({ name }) => !wanted.some((program) => program.name === name))
    .map(({ starts, stations }) => Math.min(new Set(starts).size, stations.filter(({ minutes }) => minutes > 0).length));
  return [...entered, ...cleared].reduce((sum, presses) => sum + presses, 0);
}

function pressesOf(present: Program | undefined, wanted: Program): number {
  const now = new Set(present?.starts ?? []);
  const then = new Set(wanted.starts);
  const added = [...then].filter((start) => !now.has(start)).length;
  const gone = [...now].filter((start) => !then.has(start)).length;
  const stations = new Set([...(present?.stations ?? []), ...wanted.stations].map(({ station }) => station));
  return (
    Number(!present || !sameDays(present.days, wanted.days)) +
    Math.max(added, gone) +
    Number((present?.adjustPercent ?? 100) !== wanted.adjustPercent) +
    [...stations].reduce((sum, station) => sum + pressesOfStation(present, wanted, station), 0)
  );
}

function pressesOfStation(present: Program | undefined, wanted: Program, station: number): number {
  const [now, then] = [stationNow(present, station), stationNow(wanted, station)];
  return then ? pressesBetween(now, then) : Number(now !== null);
}
