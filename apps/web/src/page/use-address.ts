import { useCallback, useMemo } from 'react';
import { useSearchParams } from 'react-router';

/** How a page's place (filters, sort, month) stands in its address. A place that is usual leaves no trace there. */
export interface Address<Place> {
  readonly read: (query: URLSearchParams) => Place;
  readonly write: (place: Place) => Readonly<Record<string, string | null>>;
}

/** The page's place, kept in its address, so that a link leads to exactly this view. Another view takes the place of this one in the history. */
export function useAddress<Place>({ read, write }: Address<Place>): readonly [Place, (change: Partial<Place>) => void] {
  const [query, setQuery] = useSearchParams();
  const place = useMemo(() => read(query), [read, query]);
  const change = useCallback(
    (changed: Partial<Place>) =>
      setQuery(
        (before) => {
          const next = new URLSearchParams(before);
          for (const [key, value] of Object.entries(write({ ...read(before), ...changed }))) {
            if (value) next.set(key, value);
            else next.delete(key);
          }
          return next;
        },
        { replace: true },
      ),
    [setQuery, read, write],
  );
  return [place, change];
}

/** A word of the address if it is one of those that mean something, else the usual one. */
export const oneOf = <Word extends string>(found: string | null, words: readonly Word[], usual: Word): Word =>
  words.find((word) => word === found) ?? usual;

/** A month of the address, 'YYYY-MM'; anything else is none. */
export const monthIn = (found: string | null): string | null => (found && /^\d{4}-(0[1-9]|1[0-2])$/.test(found) ? found : null);
