import { type ReactNode, useId } from 'react';

interface Props {
  /** What was found, as a sentence. */
  readonly heading: string;
  readonly note?: ReactNode;
  readonly id?: string;
  readonly children?: ReactNode;
}

/** A part of a page under a hairline, named by its heading. */
export function Section({ heading, note, id, children }: Props) {
  const name = useId();
  return (
    <section className="part" aria-labelledby={name} {...(id ? { id } : {})}>
      <h2 id={name}>{heading}</h2>
      {note && <p className="soft part-note">{note}</p>}
      {children}
    </section>
  );
}

/** The last lines of a page: where its numbers are from and how fresh they are. */
export function Footnote({ children }: { readonly children: ReactNode }) {
  return <footer className="foot">{children}</footer>;
}
