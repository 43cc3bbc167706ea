import { useApolloClient } from '@apollo/client/react';
import { useEffect, useSyncExternalStore } from 'react';
import { usePhone } from '../../../offline/PhoneProvider.js';
import { useField } from '../device/FieldPhone.js';
import { fetchToShelf, shelfName } from '../device/use-shelved.js';
import { stopDocument } from '../stop-document.js';

const nameOf = (id: string): string => shelfName(stopDocument as never, { id });

/** Fresh for so long: a packet is not fetched again each time somebody looks at the day. */
const FRESH_MS = 10 * 60_000;

/** Brings every stop of a day onto the phone, one after the other; how many are there. */
export function useDayPacket(stopIds: readonly string[]): number {
  const client = useApolloClient();
  const phone = usePhone();
  const { now } = useField().clock;
  const ids = stopIds.join(' ');
  useEffect(() => {
    let isGone = false;
    const isOld = (id: string): boolean => {
      const row = phone.shelved(nameOf(id));
      return !row || now().getTime() - Date.parse(row.at) > FRESH_MS;
    };
    const bring = async (): Promise<void> => {
      for (const id of ids.split(' ').filter(Boolean)) {
        if (isGone) return;
        // Without signal the rest waits for the next look at the day.
        if (isOld(id)) await fetchToShelf(client, phone, stopDocument, { id }, now);
      }
    };
    bring().catch(() => undefined);
    return () => {
      isGone = true;
    };
  }, [client, phone, now, ids]);
  return useSyncExternalStore(phone.subscribe, () => stopIds.filter((id) => phone.shelved(nameOf(id))).length);
}
