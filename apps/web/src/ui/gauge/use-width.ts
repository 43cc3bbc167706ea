import { type RefObject, useLayoutEffect, useState } from 'react';

/** The width an element has, followed as it changes; null until it is known, and where nobody asks. */
export function useWidth(place: RefObject<HTMLElement | null>, isAsked: boolean): number | null {
  const [width, setWidth] = useState<number | null>(null);
  useLayoutEffect(() => {
    const element = place.current;
    if (!isAsked || !element) return;
    const measure = (): void => {
      const now = Math.floor(element.clientWidth);
      if (now > 0) setWidth(now);
    };
    measure();
    if (typeof ResizeObserver === 'undefined') return;
    const watcher = new ResizeObserver(measure);
    watcher.observe(element);
    return () => watcher.disconnect();
  }, [place, isAsked]);
  return width;
}
