import { givenTravel, type TravelTable } from '@rillbook/routing/travel/travel-table.js';
import type { Position } from '@rillbook/routing/travel/great-circle-distance.js';

/** Places asked about at a time, on each side: servers of this kind commonly take a hundred. */
const AT_A_TIME = 50;

/** A server that does not answer within this is treated as one that is not there. [ms] */
const PATIENCE_MS = 10_000;

/** Decimals of a degree that are sent: about a metre. */
const DECIMALS = 5;

type Block = readonly (readonly (number | null)[])[];

/** What the table service answers: rows of durations [s] and of distances [m], one row for each source. */
interface TableAnswer {
  readonly durations: Block;
  readonly distances: Block | null;
}

/** What keeps a server from being used; a page says it in its reader's words. */
export type ServerFault = 'not reached' | 'no answer in time' | 'refused' | 'no whole table';

/** The server did not answer with a whole table; the message says what came instead. */
export class RoutingServerFault extends Error {
  override readonly name = 'RoutingServerFault';

  constructor(
    readonly fault: ServerFault,
    message: string,
  ) {
    super(message);
  }
}

/**
 * Travel between all places, asked of the office's own routing server: GET base/lon,lat;lon,lat…?sources=…&destinations=…&annotations=…, which
 * answers { durations, distances }. Only whoever runs this product names the server; nothing that people type reaches its address.
 */
export async function travelByServer(base: string, positions: readonly Position[]): Promise<TravelTable> {
  const groups: number[][] = [];
  for (let from = 0; from < positions.length; from += AT_A_TIME) {
    groups.push(positions.slice(from, from + AT_A_TIME).map((_, at) => from + at));
  }
  const seconds = emptyBlock(positions.length);
  const metres = emptyBlock(positions.length);
  let hasMetres = true;
  for (const sources of groups) {
    for (const destinations of groups) {
      const { durations, distances } = await ask(base, positions, { sources, destinations });
      hasMetres &&= distances !== null;
      fill(seconds, durations, { sources, destinations });
      if (distances) fill(metres, distances, { sources, destinations });
    }
  }
  return givenTravel(seconds, hasMetres ? metres : null);
}

interface Asked {
  readonly sources: readonly number[];
  readonly destinations: readonly number[];
}

const emptyBlock = (size: number): (number | null)[][] => Array.from({ length: size }, () => new Array<number | null>(size).fill(null));

function fill(table: (number | null)[][], block: Block, { sources, destinations }: Asked): void {
  for (const [row, from] of sources.entries()) {
    for (const [column, to] of destinations.entries()) table[from]![to] = block[row]![column]!;
  }
}

async function ask(base: string, positions: readonly Position[], { sources, destinations }: Asked): Promise<TableAnswer> {
  const asked = sources[0] === destinations[0] ? sources : [...sources, ...destinations];
  const places = asked
    .map((at) => positions[at]!)
    .map(({ latitude, longitude }) => `${longitude.toFixed(DECIMALS)},${latitude.toFixed(DECIMALS)}`);
  const index = (group: readonly number[]): string => group.map((at) => asked.indexOf(at)).join(';');
  const url = new URL(`${base.replace(/\/+$/, '')}/${places.join(';')}`);
  url.search = new URLSearchParams({
    sources: index(sources),
    destinations: index(destinations),
    annotations: 'duration,distance',
  }).toString();
  const answer = await fetch(url, {
    signal: AbortSignal.timeout(PATIENCE_MS),
    redirect: 'error',
    headers: { accept: 'application/json' },
  }).catch((problem: unknown) => {
    throw new RoutingServerFault(isTimeout(problem) ? 'no answer in time' : 'not reached', String(problem));
  });
  if (!answer.ok) throw new RoutingServerFault('refused', `status ${answer.status}`);
  const body: unknown = await answer.json().catch((problem: unknown) => {
    throw new RoutingServerFault(isTimeout(problem) ? 'no answer in time' : 'no whole table', String(problem));
  });
  return read(body, sources.length, destinations.length);
}

const isTimeout = (problem: unknown): boolean => problem instanceof DOMException && problem.name === 'TimeoutError';

function read(body: unknown, rows: number, columns: number): TableAnswer {
  const { durations, distances } = (body ?? {}) as { readonly durations?: unknown; readonly distances?: unknown };
  const isBlock = (value: unknown): value is Block =>
    Array.isArray(value) &&
    value.length === rows &&
    value.every((row) => Array.isArray(row) && row.length === columns && row.every((cell) => typeof cell === 'number' && cell >= 0));
  if (!isBlock(durations)) throw new RoutingServerFault('no whole table', 'an answer without a whole table of durations');
  return { durations, distances: isBlock(distances) ? distances : null };
}
