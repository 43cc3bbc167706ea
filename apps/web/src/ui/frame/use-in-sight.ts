import { type RefObject, useLayoutEffect, useRef } from 'react';

/** Brings a part of the page to its beginning whenever it shows something else and the beginning stands out of sight. */
export function useInSight<T extends HTMLElement>(shows: string): RefObject<T | null> {
  const part = useRef<T>(null);
  useLayoutEffect(() => {
    const { top } = part.current?.getBoundingClientRect() ?? { top: 0 };
    if (top < 0 || top > window.innerHeight / 2) part.current?.scrollIntoView();
  }, [shows]);
  return part;
}
