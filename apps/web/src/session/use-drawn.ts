import { useEffect, useState } from 'react';

/** Whether something was drawn before. Without a line a page shows what is on the device first, and asks the server after. */
export function useDrawn(): boolean {
  const [isDrawn, setDrawn] = useState(() => navigator.onLine);
  useEffect(() => {
    if (isDrawn) return;
    const drawn = setTimeout(() => setDrawn(true), 0);
    return () => clearTimeout(drawn);
  }, [isDrawn]);
  return isDrawn;
}
