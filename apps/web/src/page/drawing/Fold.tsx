import type { ReactNode } from 'react';

interface Props {
  readonly summary: ReactNode;
  readonly children: ReactNode;
}

/** What is asked for seldom, folded under a line that says what it is. */
export function Fold({ summary, children }: Props) {
  return (
    <details className="fold">
      <summary>{summary}</summary>
      {children}
    </details>
  );
}
