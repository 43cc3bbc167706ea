import { useCallback } from 'react';
import { useSays } from '../../says/use-says.js';

interface Order {
  readonly kind: string;
  readonly what: string;
}

/** A work order as a line: Adjust: set program A as planned. */
export function useOrderWords(): (order: Order) => string {
  const { word } = useSays();
  return useCallback(
    ({ kind, what }) => {
      const name = word('work', kind);
      const begun = name.charAt(0).toLocaleUpperCase() + name.slice(1);
      return what ? `${begun}: ${what}` : begun;
    },
    [word],
  );
}
