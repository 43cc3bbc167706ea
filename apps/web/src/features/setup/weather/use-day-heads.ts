import { useIntl } from 'react-intl';
import { useFormats } from '../../../i18n/LanguageProvider.js';

/** What a day of weather has a figure of, in the order of the columns. */
export const DAY_VALUES = ['high', 'low', 'humidity', 'dewPoint', 'wind', 'solar', 'rain', 'eto'] as const;

/** The head of each column, with its unit. */
export type DayHeads = Readonly<Record<(typeof DAY_VALUES)[number], string>>;

/** The heads in the person's words and units; on a phone, where there are no columns, they stand before each figure. */
export function useDayHeads(): DayHeads {
  const intl = useIntl();
  const { unitOf } = useFormats();
  const units = { temperature: unitOf('temperature'), speed: unitOf('speed'), depth: unitOf('depth') };
  return Object.fromEntries(DAY_VALUES.map((value) => [value, intl.formatMessage({ id: `weather.head.${value}` }, units)])) as Record<
    (typeof DAY_VALUES)[number],
    string
  >;
}
