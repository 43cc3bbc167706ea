import { useCallback, useState } from 'react';

const keyOf = (key: string): string => `rillbook.draft.${key}`;

function read<Value>(key: string, usual: Value): Value {
  try {
    const found = sessionStorage.getItem(keyOf(key));
    return found === null ? usual : (JSON.parse(found) as Value);
  } catch (problem) {
    if (problem instanceof SyntaxError) return usual;
    throw problem;
  }
}

/** What was typed and not sent yet, kept on the device at every keystroke: another step of the stop, or the page loaded again, loses nothing. */
export function useDraft<Value>(key: string, usual: Value): readonly [Value, (next: Value) => void, () => void] {
  const [held, setHeld] = useState({ key, value: read(key, usual) });
  const value = held.key === key ? held.value : read(key, usual);
  const set = useCallback(
    (next: Value) => {
      sessionStorage.setItem(keyOf(key), JSON.stringify(next));
      setHeld({ key, value: next });
    },
    [key],
  );
  const clear = useCallback(() => {
    sessionStorage.removeItem(keyOf(key));
    setHeld({ key, value: usual });
    // The usual value is written anew at each drawing; what it was when the draft began is meant.
    // eslint-disable-next-line
  }, [key]);
  return [value, set, clear];
}
