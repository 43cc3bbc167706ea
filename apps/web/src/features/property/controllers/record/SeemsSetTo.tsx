import { FormattedMessage, useIntl } from 'react-intl';
import type { ControllerToRecordQuery } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { clockInWords, daysInWords } from '../../plan/settings/days-in-words.js';

export type Inferred = NonNullable<NonNullable<ControllerToRecordQuery['controller']>['inferredSettings']>;

/** What the meter's hours say of settings that nobody knows: days, starts and how long, to be confirmed at the controller. */
export function SeemsSetTo({ inferred: { through, programs } }: { readonly inferred: Inferred }) {
  const intl = useIntl();
  const formats = useFormats();
  return (
    <>
      <p>
        <FormattedMessage id="property.settings.seems" values={{ day: formats.day(through) }} />
      </p>
      <ul>
        {programs.map(({ name, days, starts, minutes, confidence }) => (
          <li key={name}>
            <FormattedMessage
              id="property.settings.seemsProgram"
              values={{
                days: daysInWords(intl, formats, days),
                starts: intl.formatList(starts.map((start, at) => `${clockInWords(formats, start)} (${formats.number(minutes[at])} min)`)),
                share: formats.percent(confidence),
              }}
            />
          </li>
        ))}
      </ul>
    </>
  );
}
