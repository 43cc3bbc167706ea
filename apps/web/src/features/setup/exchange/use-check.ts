import { useCallback, useState } from 'react';
import { imports, type Sent } from './upload/imports.js';
import { useRequest } from './upload/use-request.js';

/** Files on their way to be checked: what a page shows of it, and how it is begun. */
export interface FilesToCheck {
  readonly onFiles: (files: readonly File[]) => void;
  readonly isBusy: boolean;
  /** How much is sent; null before the first bytes went. */
  readonly sent: Sent | null;
  readonly problem: unknown;
}

/** Sends files to be checked, and tells the upload's id when they were. */
export function useCheck(onChecked: (id: string) => void): FilesToCheck {
  const { run, isBusy, problem } = useRequest(imports.check);
  const [sent, setSent] = useState<Sent | null>(null);
  const begin = useCallback(
    async (files: readonly File[]): Promise<void> => {
      if (files.length === 0) return;
      setSent(null);
      const checked = await run(files, setSent);
      if (checked) onChecked(checked.id);
    },
    [run, onChecked],
  );
  const onFiles = useCallback((files: readonly File[]) => void begin(files), [begin]);
  return { onFiles, isBusy, sent, problem };
}
