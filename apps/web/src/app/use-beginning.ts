import { useLayoutEffect } from 'react';
import { useLocation, useNavigationType } from 'react-router';

/**
 * Where a link or a decision leads is seen from its beginning. The way back leads to where one was: the browser remembers. What takes its
 * own place in the history, such as a filter, leaves the page where it stands.
 */
export function useBeginning(): void {
  const { key } = useLocation();
  const type = useNavigationType();
  useLayoutEffect(() => {
    if (type === 'PUSH') document.documentElement.scrollTop = 0;
  }, [key, type]);
}
