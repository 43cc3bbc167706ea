import { useCallback, useState } from 'react';

export interface HttpDeed<Arguments extends readonly unknown[], Answer> {
  readonly run: (...given: Arguments) => Promise<Answer | undefined>;
  readonly isBusy: boolean;
  readonly problem: unknown;
}

/** A request whose failure is a value to show; undefined where it failed. */
export function useRequest<Arguments extends readonly unknown[], Answer>(
  request: (...given: Arguments) => Promise<Answer>,
): HttpDeed<Arguments, Answer> {
  const [isBusy, setBusy] = useState(false);
  const [problem, setProblem] = useState<unknown>(null);
  const run = useCallback(
    async (...given: Arguments): Promise<Answer | undefined> => {
      setBusy(true);
      setProblem(null);
      try {
        return await request(...given);
      } catch (error) {
        setProblem(error);
        return undefined;
      } finally {
        setBusy(false);
      }
    },
    [request],
  );
  return { run, isBusy, problem };
}
