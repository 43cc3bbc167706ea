import type { FragmentType } from '@apollo/client';
import { FormattedMessage } from 'react-intl';
import { graphql } from '../../graphql/__generated__/gql.js';
import type { ReportSentFragment } from '../../graphql/__generated__/graphql.js';
import { useFormats } from '../../i18n/LanguageProvider.js';
import { reportFile } from '../../page/paths.js';
import { useMasked } from '../../page/use-masked.js';

export const reportSent = graphql(`
  fragment ReportSent on WaterReport {
    id
    fromOn
    untilOn
    sentAt
    note
    content {
      verdict
    }
  }
`);

/** One report: the days it tells of, when it was sent, and its note. */
export function ReportSent({ report: masked }: { readonly report: FragmentType<ReportSentFragment> }) {
  const { days, moment } = useFormats();
  const { id, fromOn, untilOn, sentAt, note, content } = useMasked(reportSent, masked);
  return (
    <li>
      <b>{days(fromOn, untilOn)}</b>{' '}
      {sentAt && (
        <span className="soft">
          <FormattedMessage id="yourWater.sent" values={{ when: moment(sentAt) }} />
        </span>
      )}
      <p>{content.verdict}</p>
      {note && <p className="as-written">{note}</p>}
      <p className="files">
        {(['pdf', 'xlsx', 'csv'] as const).map((kind) => (
          <a key={kind} href={reportFile(id, kind)} target="_blank" rel="noreferrer">
            <FormattedMessage id={`yourWater.file.${kind}`} values={{ days: days(fromOn, untilOn) }} />
          </a>
        ))}
      </p>
    </li>
  );
}
