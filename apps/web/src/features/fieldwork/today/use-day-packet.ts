import type { ApolloClient } from '@apollo/client';
import { useApolloClient } from '@apollo/client/react';
import { useEffect, useSyncExternalStore } from 'react';
import type { TodayQuery } from '../../../graphql/__generated__/graphql.js';
import { usePhone } from '../../../offline/PhoneProvider.js';
import type { Phone } from '../../../offline/phone.js';
import { useField } from '../device/FieldPhone.js';
import { fetchToShelf, shelfName } from '../device/use-shelved.js';
import { stopDocument } from '../stop-document.js';
import { daysAfter } from '../urls.js';
import { todayDocument } from './today-document.js';

const nameOf = (id: string): string => shelfName(stopDocument as never, { id });

/** Fresh for so long: a packet is not fetched again each time somebody looks at the day. */
const FRESH_MS = 10 * 60_000;
/** The next day with work is looked for so far: over a long weekend. */
const MOST_DAYS_AHEAD = 4;

interface Ground {
  readonly client: ApolloClient;
  readonly phone: Phone;
  readonly now: () => Date;
  readonly isGone: () => boolean;
}

const isOld = ({ phone, now }: Ground, name: string): boolean => {
  const row = phone.shelved(name);
  return !row || now().getTime() - Date.parse(row.at) > FRESH_MS;
};

/** Stops onto the phone, one after the other. */
async function bringStops(ground: Ground, ids: readonly string[]): Promise<void> {
  for (const id of ids) {
    if (ground.isGone()) return;
    if (isOld(ground, nameOf(id))) await fetchToShelf(ground.client, ground.phone, stopDocument, { id }, ground.now);
  }
}

/** The next day on which there is something to do: it may begin at a yard without signal. */
async function bringNextDay(ground: Ground, today: string, crewId: string | null): Promise<void> {
  for (let ahead = 1; ahead <= MOST_DAYS_AHEAD && !ground.isGone(); ahead += 1) {
    const asked = { day: daysAfter(today, ahead), crewId };
    const name = shelfName(todayDocument as never, asked);
    if (isOld(ground, name)) await fetchToShelf(ground.client, ground.phone, todayDocument, asked, ground.now);
    const ids = (ground.phone.shelved(name)?.data as TodayQuery | undefined)?.today.flatMap(({ stops }) => stops.map(({ id }) => id)) ?? [];
    if (ids.length > 0) return bringStops(ground, ids);
  }
}

interface Day {
  readonly stopIds: readonly string[];
  /** The day after which the next is brought too; null where only these stops are. */
  readonly before: string | null;
  readonly crewId: string | null;
}

/** Brings every stop of a day onto the phone, then those of the next; how many of the first are there. */
export function useDayPacket({ stopIds, before, crewId }: Day): number {
  const client = useApolloClient();
  const phone = usePhone();
  const { now } = useField().clock;
  const ids = stopIds.join(' ');
  useEffect(() => {
    let isGone = false;
    const ground: Ground = { client, phone, now, isGone: () => isGone };
    const bring = async (): Promise<void> => {
      await bringStops(ground, ids.split(' ').filter(Boolean));
      if (before !== null) await bringNextDay(ground, before, crewId);
    };
    // Without signal the rest waits for the next look at the day.
    bring().catch(() => undefined);
    return () => {
      isGone = true;
    };
  }, [client, phone, now, ids, before, crewId]);
  return useSyncExternalStore(phone.subscribe, () => stopIds.filter((id) => phone.shelved(nameOf(id))).length);
}
