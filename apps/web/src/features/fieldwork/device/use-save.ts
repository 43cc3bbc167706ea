import { useCallback } from 'react';
import type { Operation, Said } from '../../../offline/operation.js';
import { usePhone } from '../../../offline/PhoneProvider.js';
import { useField } from './FieldPhone.js';

interface Options {
  /** The form whose draft this was. */
  readonly draft?: string;
  readonly picture?: ArrayBuffer;
  /** How long fingers rest before it is sent. [ms] */
  readonly restMs?: number;
}

export type Save = (said: Said, options?: Options) => Promise<Operation | null>;

/** Saves on the phone; it is sent when there is signal. Null where the phone could not keep it, which the line above the dock then says. */
export function useSave(): Save {
  const phone = usePhone();
  const { sendSoon } = useField();
  return useCallback(
    async (said, options = {}) => {
      try {
        const { restMs, ...rest } = options;
        const saved = await phone.save(said, rest);
        sendSoon(restMs);
        return saved;
      } catch (problem) {
        // The phone itself remembers what went wrong and shows it.
        if (phone.trouble !== null) return null;
        throw problem;
      }
    },
    [phone, sendSoon],
  );
}
