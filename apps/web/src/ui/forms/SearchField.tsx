import { useEffect, useRef } from 'react';
import { isTyping } from '../tables/keys.js';
import { Field } from './Field.js';

interface Props {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** The slash key leads here, as the page's one search. */
  readonly hasKey?: boolean;
}

/** Finds in the list below as one types. */
export function SearchField({ label, value, onChange, hasKey = true }: Props) {
  const box = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (!hasKey) return;
    const onKey = (event: KeyboardEvent): void => {
      if (event.key !== '/' || event.ctrlKey || event.metaKey || isTyping(event.target)) return;
      event.preventDefault();
      box.current?.focus();
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  }, [hasKey]);
  return (
    <Field label={label}>
      {(control) => (
        <input
          {...control}
          ref={box}
          type="search"
          autoComplete="off"
          spellCheck={false}
          value={value}
          onChange={(event) => onChange(event.target.value)}
          aria-keyshortcuts={hasKey ? '/' : undefined}
        />
      )}
    </Field>
  );
}
