import { useCallback, useState } from 'react';
import { useOutbox, usePhone } from './PhoneProvider.js';

/** What was typed and not saved yet, kept on the phone at every keystroke: another step, another day or a dead battery loses nothing. */
export function useDraft<Value>(key: string, usual: Value): readonly [Value, (next: Value) => void, () => void] {
  const phone = usePhone();
  const { drafts } = useOutbox();
  // What is on the screen follows the fingers; what is on the phone follows a moment later.
  const [typed, setTyped] = useState<{ readonly key: string; readonly value: Value } | null>(null);
  const kept = key in drafts ? (drafts[key] as Value) : usual;
  const value = typed?.key === key ? typed.value : kept;
  const set = useCallback(
    (next: Value) => {
      setTyped({ key, value: next });
      // What could not be kept is told by the phone in the line above the dock.
      phone.type(key, next).catch(() => undefined);
    },
    [phone, key],
  );
  const clear = useCallback(() => {
    setTyped(null);
    phone.happen({ type: 'cleared', draft: key }).catch(() => undefined);
  }, [phone, key]);
  return [value, set, clear];
}
