import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { daysOf, WEEKDAYS } from '../../../programs/settings-fact.js';

/** The days of a program: how many, and which. */
export function DaysInWords({ days }: { readonly days: string }) {
  const intl = useIntl();
  const { day } = useFormats();
  const found = daysOf(days);
  switch (found.kind) {
    case 'weekdays':
      return (
        <>
          <FormattedMessage id="field.days.count" values={{ count: found.weekdays.length }} />
          <br />
          <small>
            {found.weekdays.length === WEEKDAYS.length
              ? intl.formatMessage({ id: 'field.days.daily' })
              : found.weekdays.map((weekday) => intl.formatMessage({ id: `field.weekday.${weekday}` })).join(' ')}
          </small>
        </>
      );
    case 'daily':
      return (
        <>
          <FormattedMessage id="field.days.count" values={{ count: WEEKDAYS.length }} />
          <br />
          <small>
            <FormattedMessage id="field.days.daily" />
          </small>
        </>
      );
    case 'every':
      return (
        <>
          <FormattedMessage id="field.days.every" values={{ count: found.everyDays }} />
          <br />
          <small>
            <FormattedMessage id="field.days.from" values={{ day: day(found.from) }} />
          </small>
        </>
      );
    case 'odd':
    case 'even':
      return <FormattedMessage id={`field.days.${found.kind}`} />;
  }
}
