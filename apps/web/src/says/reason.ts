/** A code with details, as the server gives it: the sentence is made here, in the reader's language and units. */
export interface Reason {
  readonly code: string;
  readonly details: unknown;
}

export interface Details {
  readonly number: (key: string) => number | null;
  readonly text: (key: string) => string | null;
  readonly texts: (key: string) => readonly string[];
  readonly numbers: (key: string) => readonly number[];
}

/** Reads details without believing in their shape: what is not there is null. */
export function detailsOf({ details }: Reason): Details {
  const found = (key: string): unknown => (details && typeof details === 'object' ? Reflect.get(details, key) : undefined);
  return {
    number: (key) => {
      const value = found(key);
      return typeof value === 'number' && Number.isFinite(value) ? value : null;
    },
    text: (key) => {
      const value = found(key);
      return typeof value === 'string' && value !== '' ? value : null;
    },
    texts: (key) => {
      const value = found(key);
      return Array.isArray(value) ? value.filter((each) => typeof each === 'string') : [];
    },
    numbers: (key) => {
      const value = found(key);
      return Array.isArray(value) ? value.filter((each) => typeof each === 'number') : [];
    },
  };
}
