import { useEffect, useRef, useState } from 'react';
import { listenToDay } from './listen-to-day.js';

/** Fetches the day again as things happen, as long as it is today's; whether that is at once. */
export function useLiveDay(isToday: boolean, refetch: () => Promise<unknown>): boolean {
  const [isLive, setLive] = useState(false);
  const latest = useRef(refetch);
  useEffect(() => {
    latest.current = refetch;
  }, [refetch]);
  useEffect(() => {
    if (!isToday) return undefined;
    return listenToDay({
      // An answer that does not come is seen on the page by the query itself.
      onChange: () => void latest.current().catch(() => undefined),
      onLive: setLive,
    });
  }, [isToday]);
  return isToday && isLive;
}
