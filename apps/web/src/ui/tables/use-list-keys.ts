import { type RefCallback, useCallback, useEffect, useRef, useState } from 'react';
import { isActing, isTyping } from './keys.js';

interface Options {
  readonly count: number;
  /** What Enter does with the row it stands on. */
  readonly onOpen: (row: number) => void;
  /** Further keys of this list, such as `a` for accept. */
  readonly keys?: Readonly<Record<string, (row: number) => void>>;
  /** Where it begins; none is chosen until a key is pressed. */
  readonly start?: number;
}

export interface RowProps {
  readonly ref: RefCallback<HTMLElement>;
  readonly tabIndex: 0 | -1;
  readonly 'data-here': 'yes' | undefined;
}

interface ListKeys {
  /** The row the keys stand on; −1 before the first key. */
  readonly row: number;
  readonly rowProps: (row: number) => RowProps;
  readonly go: (row: number) => void;
}

/** Works a list through with the keyboard: j and k move, Enter opens, and further keys act on the row. */
export function useListKeys({ count, onOpen, keys, start = -1 }: Options): ListKeys {
  const [row, setRow] = useState(start);
  const elements = useRef(new Map<number, HTMLElement>());
  const here = Math.min(row, count - 1);
  const go = useCallback((next: number) => {
    setRow(next);
    const element = elements.current.get(next);
    element?.focus({ preventScroll: true });
    element?.scrollIntoView?.({ block: 'nearest' });
  }, []);
  useEffect(() => {
    const deed = (key: string, target: EventTarget | null): (() => void) | undefined => {
      if (key === 'j') return () => go(Math.min(count - 1, here + 1));
      if (key === 'k') return () => go(Math.max(0, here - 1));
      if (here < 0) return undefined;
      if (key === 'Enter') return isActing(target) ? undefined : () => onOpen(here);
      const own = keys?.[key];
      return own && (() => own(here));
    };
    const onKey = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.metaKey || event.altKey || event.defaultPrevented) return;
      if (isTyping(event.target) || count === 0 || document.querySelector('dialog[open]')) return;
      const act = deed(event.key, event.target);
      if (!act) return;
      event.preventDefault();
      act();
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  }, [count, here, keys, onOpen, go]);
  const rowProps = (place: number): RowProps => ({
    ref: (element) => {
      if (element) elements.current.set(place, element);
      else elements.current.delete(place);
    },
    tabIndex: place === Math.max(0, here) ? 0 : -1,
    'data-here': place === here ? 'yes' : undefined,
  });
  return { row: here, rowProps, go };
}
