import { useCallback } from 'react';
import { useIntl } from 'react-intl';
import { useFormats } from '../../i18n/LanguageProvider.js';
import { useSays } from '../../says/use-says.js';

interface Order {
  readonly kind: string;
  readonly what: string;
  /** Of a rain pause that is to be set: the first day with water. */
  readonly waterAgainOn?: string | null;
}

/** A work order as a line: Adjust: set program A as planned; or the rain pause that is to be set. */
export function useOrderWords(): (order: Order) => string {
  const intl = useIntl();
  const { dayInWords } = useFormats();
  const { word } = useSays();
  return useCallback(
    ({ kind, what, waterAgainOn }) => {
      if (waterAgainOn) return intl.formatMessage({ id: 'work.rainPause' }, { day: dayInWords(waterAgainOn), what });
      const name = word('work', kind);
      const begun = name.charAt(0).toLocaleUpperCase() + name.slice(1);
      return what ? `${begun}: ${what}` : begun;
    },
    [intl, dayInWords, word],
  );
}
