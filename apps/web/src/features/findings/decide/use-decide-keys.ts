import { useEffect } from 'react';
import { isTyping } from '../../../ui/tables/keys.js';

/** What a dialog is open for. */
export type Deed = 'accept' | 'wait' | 'dismiss' | 'resolve' | 'help';

const DEEDS: Readonly<Record<string, Deed>> = { a: 'accept', s: 'wait', d: 'dismiss', r: 'resolve', '?': 'help' };

/** a accepts, s lets it wait, d dismisses, r resolves, ? tells the keys; only help where the person decides nothing. */
export function useDecideKeys(onDeed: (deed: Deed) => void, mayDecide: boolean): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.metaKey || event.altKey || event.defaultPrevented) return;
      if (isTyping(event.target) || document.querySelector('dialog[open]')) return;
      const deed = DEEDS[event.key];
      if (!deed || !(mayDecide || deed === 'help')) return;
      event.preventDefault();
      onDeed(deed);
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  }, [onDeed, mayDecide]);
}
