import { FormattedMessage } from 'react-intl';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import type { Sending } from './use-sending.js';

/** The line above the dock: what was sent and when, and what was not. */
export function SentLine({ sending: { underWay, unsent, lastSentAt } }: { readonly sending: Sending }) {
  const { time } = useFormats();
  if (underWay > 0) return <FormattedMessage id="field.sent.underWay" />;
  if (unsent.length > 0) return <FormattedMessage id="field.sent.not" values={{ count: unsent.length, what: unsent[0] ?? '' }} />;
  if (lastSentAt) return <FormattedMessage id="field.sent.last" values={{ time: time(lastSentAt) }} />;
  return <FormattedMessage id="field.sent.nothing" />;
}
