import { useState } from 'react';

/** By report: closing it, looking at another or at another page loses nothing of what was typed. */
const typed = new Map<string, string>();

export interface TypedNote {
  readonly written: string;
  readonly write: (words: string) => void;
  /** whether it differs from what is kept: what is approved now would go out without it */
  readonly isUnkept: boolean;
}

/** The note as it is on the screen, beside the one that is kept. */
export function useTypedNote(reportId: string, kept: string | null | undefined): TypedNote {
  const [words, setWords] = useState<string | null>(typed.get(reportId) ?? null);
  const write = (next: string): void => {
    typed.set(reportId, next);
    setWords(next);
  };
  const written = words ?? kept ?? '';
  return { written, write, isUnkept: written.trim() !== (kept ?? '').trim() };
}
