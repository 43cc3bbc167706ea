import type { FragmentType } from '@apollo/client';
import { FormattedMessage } from 'react-intl';
import { graphql } from '../../graphql/__generated__/gql.js';
import type { ReportSentFragment } from '../../graphql/__generated__/graphql.js';
import { useFormats } from '../../i18n/LanguageProvider.js';
import { useMasked } from '../../page/use-masked.js';

export const reportSent = graphql(`
  fragment ReportSent on WaterReport {
    id
    fromOn
    untilOn
    sentAt
    note
  }
`);

/** One report: the days it tells of, when it was sent, and its note. */
export function ReportSent({ report: masked }: { readonly report: FragmentType<ReportSentFragment> }) {
  const { days, moment } = useFormats();
  const { fromOn, untilOn, sentAt, note } = useMasked(reportSent, masked);
  return (
    <li>
      <b>{days(fromOn, untilOn)}</b>{' '}
      {sentAt && (
        <span className="soft">
          <FormattedMessage id="yourWater.sent" values={{ when: moment(sentAt) }} />
        </span>
      )}
      {note && <p>{note}</p>}
    </li>
  );
}
