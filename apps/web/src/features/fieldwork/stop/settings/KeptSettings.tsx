import { FormattedMessage } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useSays } from '../../../../says/use-says.js';
import type { KeptFact } from './use-settings.js';

/** The settings as they were kept. */
export function KeptSettings({ kept: { record, at, isOther, by } }: { readonly kept: KeptFact }) {
  const { time } = useFormats();
  const { word } = useSays();
  return (
    <p className="after" role="status">
      {isOther ? (
        <FormattedMessage id="field.settings.other" values={{ by: by ?? 'nobody', time: time(at) }} />
      ) : (
        <FormattedMessage id="field.settings.kept" values={{ record: word('record', record), time: time(at) }} />
      )}
    </p>
  );
}
