import { FormattedMessage, useIntl } from 'react-intl';
import type { FindingOfArticleFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { endedWords } from '../../../says/saying.js';

/** What was decided, by whom, when and why. */
export function Decided({ finding }: { readonly finding: FindingOfArticleFragment }) {
  const intl = useIntl();
  const { moment } = useFormats();
  const { state, dismissedWhy, resolvedWith, decidedBy, decidedAt } = finding;
  if (state !== 'dismissed' && state !== 'resolved') return null;
  const values = { by: decidedBy ?? 'none', on: decidedAt ? moment(decidedAt) : 'none' };
  return (
    <p className="decided">
      {state === 'dismissed' ? (
        <FormattedMessage id="findings.decided.dismissed" values={{ ...values, why: dismissedWhy ?? '' }} />
      ) : (
        <FormattedMessage id="findings.decided.resolved" values={{ ...values, why: endedWords(intl, resolvedWith ?? '') }} />
      )}
    </p>
  );
}
