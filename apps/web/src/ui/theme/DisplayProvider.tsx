import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useState } from 'react';
import { type Display, keepDisplay, keptDisplay, onDeviceLook, showDisplay } from './display.js';

interface Chosen {
  readonly display: Display;
  /** What stands on the page now, chosen or followed. */
  readonly theme: 'light' | 'dark';
  readonly change: (part: Partial<Display>) => void;
  /** A page for the field says so while it stands. */
  readonly setField: (isField: boolean) => void;
}

const DisplayContext = createContext<Chosen | null>(null);

/** Keeps the person's look on the page, and follows the device where they left it to the device. */
export function DisplayProvider({ children }: { readonly children: ReactNode }) {
  const [display, setDisplay] = useState(keptDisplay);
  const [isField, setField] = useState(false);
  const [theme, setTheme] = useState<'light' | 'dark'>('light');
  useEffect(() => {
    const show = (): void => setTheme(showDisplay(display, isField));
    show();
    return onDeviceLook(show);
  }, [display, isField]);
  const change = useCallback((part: Partial<Display>) => {
    setDisplay((before) => {
      const after = { ...before, ...part };
      keepDisplay(after);
      return after;
    });
  }, []);
  const chosen = useMemo(() => ({ display, theme, change, setField }), [display, theme, change]);
  return <DisplayContext value={chosen}>{children}</DisplayContext>;
}

export function useDisplay(): Chosen {
  const chosen = useContext(DisplayContext);
  if (!chosen) throw new Error('useDisplay stands outside a DisplayProvider.');
  return chosen;
}
