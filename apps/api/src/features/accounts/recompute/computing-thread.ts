// A thread of a large job: computes the accounts of the properties that it is given, and knows no database.
import { parentPort } from 'node:worker_threads';
import type { AccountDay } from '@rillbook/metering/volumes/weather-series.js';
import { type Prices, pricesOfTiers } from '../../portfolio/suppliers/prices-of-tiers.service.js';
import { EtoSeries } from '../gather/eto-series.js';
import type { PropertyFacts } from '../gather/property-facts.js';
import { detailOf } from '../months/kept-detail.js';
import type { KeptMonth } from '../months/month-account.repository.js';
import { type PropertyMonths, propertyMonths, type PropertyWork } from './property-months.js';

/** A property and what its accounts are computed with. */
export interface ThreadWork {
  readonly facts: PropertyFacts;
  readonly tiers: Prices['tiers'];
  readonly today: string;
  /** month, version, packed detail and what was judged of the accounts that are kept, as they were read */
  readonly kept: readonly (readonly [string, string, Uint8Array | null, Uint8Array | null])[];
  readonly judging: PropertyWork['judging'];
}

/** Some properties, and the weather of those stations that the thread does not know yet. */
export interface ThreadBatch {
  readonly series: readonly (readonly [string, readonly AccountDay[]])[];
  readonly works: readonly ThreadWork[];
}

/** What a thread gives of a property: the details of its rows stand one after the other in `details`. */
export interface ThreadMonths extends Omit<PropertyMonths, 'event' | 'rows'> {
  readonly rows: readonly Omit<PropertyMonths['rows'][number], 'detail'>[];
  readonly detailEnds: readonly number[];
  readonly details: Uint8Array;
  readonly episodes: PropertyMonths['event']['episodes'];
  readonly newest: PropertyMonths['event']['newest'];
}

const known = new Map<string, EtoSeries>();

function monthsOf({ facts, tiers, today, judging, kept }: ThreadWork): ThreadMonths {
  const { standing, renewed, rows, event } = propertyMonths({
    facts,
    eto: (facts.property.stationId && known.get(facts.property.stationId)) || EtoSeries.none,
    prices: pricesOfTiers(tiers),
    today,
    judging,
    kept: new Map(kept.map((each) => [each[0], keptMonth(each)])),
  });
  const details = new Uint8Array(rows.reduce((sum, { detail }) => sum + detail.length, 0));
  let end = 0;
  const detailEnds = rows.map(({ detail }) => {
    details.set(detail, end);
    end += detail.length;
    return end;
  });
  const { episodes, newest } = event;
  return { standing, renewed, rows: rows.map(({ detail: _, ...row }) => row), detailEnds, details, episodes, newest };
}

const bytesOf = (bytes: Uint8Array | null): Buffer | null => bytes && Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length);

function keptMonth([month, version, detail, judged]: ThreadWork['kept'][number]): KeptMonth {
  const packed = bytesOf(detail);
  return { version, packed, judged: bytesOf(judged), detail: () => detailOf(packed, month) };
}

parentPort!.on('message', ({ series, works }: ThreadBatch) => {
  for (const [stationId, days] of series) known.set(stationId, EtoSeries.ofDays(days));
  const done = works.map(monthsOf);
  parentPort!.postMessage(
    done,
    done.map(({ details }) => details.buffer as ArrayBuffer),
  );
});
