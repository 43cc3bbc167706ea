import { nameKey } from '../../columns/text-cells.js';
import type { Names } from '../../drafts/names.js';
import type { TableFile } from '../../files/table-file.js';
import { type Problem, problemAt } from '../../problems/problem.js';

/** Whose days a file holds, and which of its lines are meant; or why that is not known. */
export interface StationChoice {
  readonly station: string | null;
  /** The station's lines, by the file's own word; null where the file does not name stations. */
  readonly only: string | null;
  readonly problem: Problem | null;
}

const same = (a: string, b: string): boolean => nameKey(a).toLowerCase() === nameKey(b).toLowerCase();

/** The station that was named; else the one that the file names itself; else the only one there is. */
export function chooseStation(table: TableFile, inFile: ReadonlySet<string>, names: Names): StationChoice {
  const at = { file: table.name, line: null };
  const known = [...names.stations];
  const wished = table.meaning?.station;
  const station = wished === undefined ? preselected(known, inFile) : (known.find((name) => nameKey(name) === nameKey(wished)) ?? null);
  const only = inFile.size > 1 ? ([...inFile].find((word) => station !== null && same(word, station)) ?? null) : null;
  return { station, only, problem: problem() };

  function problem(): Problem | null {
    if (wished !== undefined && station === null)
      return problemAt(at, 'UNKNOWN_NAME', { column: 'station', found: wished, expected: '(stations.csv)' });
    if (known.length === 0) return problemAt(at, 'NO_STATION_YET');
    if (station === null) return problemAt(at, 'STATION_NOT_CHOSEN', { expected: known.slice(0, MOST_NAMED).join(', ') });
    if (inFile.size > 1 && only === null)
      return problemAt(at, 'FILE_OF_SEVERAL_STATIONS', { found: [...inFile].slice(0, MOST_NAMED).join(', '), expected: station });
    return null;
  }
}

const MOST_NAMED = 20;

function preselected(known: readonly string[], inFile: ReadonlySet<string>): string | null {
  const named = known.filter((name) => [...inFile].some((word) => same(word, name)));
  if (named.length === 1) return named[0] ?? null;
  return known.length === 1 && inFile.size <= 1 ? (known[0] ?? null) : null;
}
