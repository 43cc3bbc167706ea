import type { ReactNode } from 'react';
import { ErrorState, LoadingState } from '../ui/states/States.js';

interface Query<Data> {
  readonly data?: Data | undefined;
  readonly error?: unknown;
  readonly refetch: () => Promise<unknown>;
}

interface Props<Data> {
  readonly query: Query<Data>;
  readonly children: (data: Data) => ReactNode;
}

/** A page's data when it is there; words while it is fetched, and what to do when it cannot be. Old data stays in sight beside a problem. */
export function Fetched<Data>({ query: { data, error, refetch }, children }: Props<Data>) {
  return (
    <>
      {error !== undefined && <ErrorState problem={error} onRetry={() => void refetch().catch(() => undefined)} />}
      {data !== undefined ? children(data) : error === undefined && <LoadingState />}
    </>
  );
}
