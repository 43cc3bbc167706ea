import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import type { ReportSentFragment } from '../../graphql/__generated__/graphql.js';
import { Section } from '../../ui/frame/Section.js';
import { ReportSent } from './ReportSent.js';

interface Props {
  readonly reports: readonly (FragmentType<ReportSentFragment> & { readonly id: string })[];
}

/** The water reports that were sent to the client. */
export function ReportsSent({ reports }: Props) {
  const intl = useIntl();
  return (
    <Section heading={intl.formatMessage({ id: 'yourWater.reports' }, { count: reports.length })}>
      {reports.length === 0 ? (
        <p className="soft">
          <FormattedMessage id="yourWater.noReports" />
        </p>
      ) : (
        <ul className="reports">
          {reports.map((report) => (
            <ReportSent key={report.id} report={report} />
          ))}
        </ul>
      )}
    </Section>
  );
}
