// A thread of a large job: computes the accounts of the properties that it is given, and knows no database.
import { parentPort } from 'node:worker_threads';
import type { AccountDay } from '@rillbook/metering/volumes/weather-series.js';
import { type Prices, pricesOfTiers } from '../../portfolio/suppliers/prices-of-tiers.service.js';
import { EtoSeries } from '../gather/eto-series.js';
import type { PropertyFacts } from '../gather/property-facts.js';
import type { AccountDetail } from '../months/month-account.entity.js';
import type { KeptMonth } from '../months/month-account.repository.js';
import { unpacked } from '../months/packed-value.js';
import { type PropertyMonths, propertyMonths } from './property-months.js';

/** A property and what its accounts are computed with. */
export interface ThreadWork {
  readonly facts: PropertyFacts;
  readonly tiers: Prices['tiers'];
  readonly today: string;
  /** month, version and packed detail of the accounts that are kept; without the detail where nobody asks for it */
  readonly kept: readonly (readonly [string, string, Uint8Array])[];
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
  /** what the months of these rows tell later ones */
  readonly history: PropertyMonths['event']['months'][number]['history'];
  readonly doubtful: PropertyMonths['event']['doubtful'];
  readonly newest: PropertyMonths['event']['newest'];
}

/** 'YYYY-MM' of a date */
const MONTH_LETTERS = 7;

const known = new Map<string, EtoSeries>();

function monthsOf({ facts, tiers, today, kept }: ThreadWork): ThreadMonths {
  const { standing, renewed, rows, event } = propertyMonths({
    facts,
    eto: (facts.property.stationId && known.get(facts.property.stationId)) || EtoSeries.none,
    prices: pricesOfTiers(tiers),
    today,
    kept: new Map(
      kept.map(([month, version, bytes]) => [month, keptMonth(version, Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length))]),
    ),
  });
  const details = new Uint8Array(rows.reduce((sum, { detail }) => sum + detail.length, 0));
  let end = 0;
  const detailEnds = rows.map(({ detail }) => {
    details.set(detail, end);
    end += detail.length;
    return end;
  });
  const { doubtful, newest } = event;
  const anew = new Set(rows.map(({ month }) => month.slice(0, MONTH_LETTERS)));
  const history = event.months.flatMap((each) => (anew.has(each.month) ? each.history : []));
  return { standing, renewed, rows: rows.map(({ detail: _, ...row }) => row), detailEnds, details, history, doubtful, newest };
}

const keptMonth = (version: string, packed: Buffer): KeptMonth => ({
  version,
  packed,
  detail: () => unpacked(packed) as AccountDetail,
});

parentPort!.on('message', ({ series, works }: ThreadBatch) => {
  for (const [stationId, days] of series) known.set(stationId, EtoSeries.ofDays(days));
  const done = works.map(monthsOf);
  parentPort!.postMessage(
    done,
    done.map(({ details }) => details.buffer as ArrayBuffer),
  );
});
