import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../i18n/LanguageProvider.js';
import type { InferredSettings } from './settings-fact.js';
import { clockInWords, daysInWords } from './days-in-words.js';

/** What the meter's hours say of settings that nobody knows: days, starts and how long, to be confirmed at the controller. */
export function SeemsSetTo({ inferred: { through, programs } }: { readonly inferred: InferredSettings }) {
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
