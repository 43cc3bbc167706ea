import { platformProblems } from '../../../platform/problems/platform.problems.js';
import type { FileMeaning } from '../files/table-file.js';

/** More than an upload and the archives in it may hold. */
const MOST_FILES = 1000;
const LONGEST_NAME = 500;
/** No anemometer stands higher, and weather.csv takes no higher one. [m] */
const HIGHEST_WIND_M = 152.4;

/** What was said of the files of an upload, by their names: a station and the height of its wind, or a property and a meter. */
export function meaningsIn(body: unknown): Readonly<Record<string, FileMeaning>> {
  const files = field(body, 'files');
  if (typeof files !== 'object' || files === null || Array.isArray(files)) throw refused('files', files, 'an object by file name');
  const entries = Object.entries(files);
  if (entries.length > MOST_FILES) throw refused('files', entries.length, `≤ ${MOST_FILES}`);
  return Object.fromEntries(entries.map(([name, said]) => [name, meaningIn(said)]));
}

function meaningIn(said: unknown): FileMeaning {
  const [station, property, meter] = ['station', 'property', 'meter'].map((name) => nameIn(said, name));
  const windHeightM = heightIn(said);
  return {
    ...(station !== undefined && { station }),
    ...(property !== undefined && { property }),
    ...(meter !== undefined && { meter }),
    ...(windHeightM !== undefined && { windHeightM }),
  };
}

function nameIn(said: unknown, name: string): string | undefined {
  const value = field(said, name);
  if (value === undefined || value === null || value === '') return undefined;
  if (typeof value !== 'string' || value.length > LONGEST_NAME) throw refused(name, value, 'a name');
  return value;
}

function heightIn(said: unknown): number | undefined {
  const value = field(said, 'windHeightM');
  if (value === undefined || value === null) return undefined;
  if (typeof value !== 'number' || !(value > 0 && value <= HIGHEST_WIND_M)) throw refused('windHeightM', value, `> 0, ≤ ${HIGHEST_WIND_M}`);
  return value;
}

function field(of: unknown, name: string): unknown {
  return typeof of === 'object' && of !== null && Object.hasOwn(of, name) ? Reflect.get(of, name) : undefined;
}

const refused = (name: string, found: unknown, expected: string): Error => platformProblems.valueRefused({ field: name, found, expected });
