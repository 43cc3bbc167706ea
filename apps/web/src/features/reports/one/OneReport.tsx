import { useQuery } from '@apollo/client/react';
import { useEffect, useRef } from 'react';
import { FormattedMessage } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { Fetched } from '../../../page/Fetched.js';
import { reportFile } from '../../../page/paths.js';
import { Button } from '../../../ui/forms/Button.js';
import { Section } from '../../../ui/frame/Section.js';
import { MailList } from './MailList.js';
import { NoteForm } from './NoteForm.js';
import { Recipients } from './Recipients.js';
import { ReportDeeds } from './ReportDeeds.js';
import { ShareLinks } from './ShareLinks.js';

export const oneReportDocument = graphql(`
  query OneReport($id: ID!) {
    waterReport(id: $id) {
      id
      content {
        title
        verdict
        dataVersion
      }
      ...NotedReport
      ...DecidedReport
      ...RecipientsOfReport
      ...MailedReport
      ...SharedReport
    }
  }
`);

interface Props {
  readonly id: string;
  /** to whom it goes */
  readonly emails: readonly string[];
  readonly onClose: () => void;
}

/** One report: what it says, its files, the office's note, approval, mails and links. */
export function OneReport({ id, emails, onClose }: Props) {
  const place = useRef<HTMLDivElement>(null);
  // What was asked for is read first, whether it was pressed far down the list or came by its address.
  useEffect(() => place.current?.focus(), []);
  const query = useQuery(oneReportDocument, { variables: { id }, fetchPolicy: 'cache-and-network' });
  return (
    <div ref={place} tabIndex={-1} className="one-report">
      <Fetched query={query}>
        {({ waterReport: report }) =>
          report ? (
            <Section heading={report.content.verdict} note={report.content.title}>
              <p className="report-files">
                {(['pdf', 'xlsx', 'csv'] as const).map((kind) => (
                  <a key={kind} href={reportFile(id, kind)} target="_blank" rel="noreferrer">
                    {kind === 'pdf' ? <FormattedMessage id="reports.preview" /> : kind.toUpperCase()}
                  </a>
                ))}
                <span className="soft">
                  <FormattedMessage id="reports.dataVersion" values={{ version: report.content.dataVersion }} />
                </span>
              </p>
              <NoteForm report={report} />
              <Recipients report={report} emails={emails} />
              <ReportDeeds report={report} dataVersion={report.content.dataVersion} />
              <MailList report={report} />
              <ShareLinks report={report} />
              <Button kind="plain" onClick={onClose}>
                <FormattedMessage id="reports.close" />
              </Button>
            </Section>
          ) : (
            <p className="soft">
              <FormattedMessage id="reports.gone" />
            </p>
          )
        }
      </Fetched>
    </div>
  );
}
