import type { ReactNode } from 'react';

interface Props {
  readonly label: ReactNode;
  /** What is known before anybody writes. */
  readonly beside?: ReactNode;
}

/** A line to write on. */
export function BlankLine({ label, beside }: Props) {
  return (
    <>
      <dt>
        {label}
        {beside && <small>{beside}</small>}
      </dt>
      <dd />
    </>
  );
}
