import { useCallback, useMemo, useState } from 'react';

export interface Sending {
  /** Sends one thing; null where it did not arrive, and its name then stands in the line above the dock until it does. */
  readonly send: <Answer>(what: string, deed: () => Promise<Answer | null>) => Promise<Answer | null>;
  readonly underWay: number;
  readonly unsent: readonly string[];
  readonly lastSentAt: string | null;
}

/** Keeps count of what was sent and what was not, for the line that is always there. */
export function useSending(now: () => Date): Sending {
  const [underWay, setUnderWay] = useState(0);
  const [unsent, setUnsent] = useState<readonly string[]>([]);
  const [lastSentAt, setLastSentAt] = useState<string | null>(null);
  const send = useCallback(
    async <Answer>(what: string, deed: () => Promise<Answer | null>): Promise<Answer | null> => {
      setUnderWay((count) => count + 1);
      const answer = await deed();
      setUnderWay((count) => count - 1);
      setUnsent((before) => {
        const others = before.filter((other) => other !== what);
        return answer === null ? [...others, what] : others;
      });
      if (answer !== null) setLastSentAt(now().toISOString());
      return answer;
    },
    [now],
  );
  return useMemo(() => ({ send, underWay, unsent, lastSentAt }), [send, underWay, unsent, lastSentAt]);
}
