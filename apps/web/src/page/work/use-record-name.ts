import { useRef } from 'react';
import { newId } from '../values/new-id.js';

interface RecordName {
  /** The name under which this content is sent, however often it is. */
  readonly nameOf: (content: object) => string;
  /** It was answered: what comes next is another record. */
  readonly forget: () => void;
}

/** Names what is sent to be kept: pressed again after a lost answer it is the same record, and only a kept one makes way for the next. */
export function useRecordName(): RecordName {
  const named = useRef<{ readonly id: string; readonly of: string } | null>(null);
  const nameOf = (content: object): string => {
    const of = JSON.stringify(content);
    if (named.current?.of !== of) named.current = { id: newId(), of };
    return named.current.id;
  };
  const forget = (): void => {
    named.current = null;
  };
  return { nameOf, forget };
}
