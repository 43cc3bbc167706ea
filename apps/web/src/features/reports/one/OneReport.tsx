import { useQuery } from '@apollo/client/react';
import { useEffect, useRef } from 'react';
import { FormattedMessage } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { OneReportQuery } from '../../../graphql/__generated__/graphql.js';
import { Fetched } from '../../../page/Fetched.js';
import { reportFile } from '../../../page/paths.js';
import { Button } from '../../../ui/forms/Button.js';
import { Section } from '../../../ui/frame/Section.js';
import { DiscardDraft } from './DiscardDraft.js';
import { MailList } from './MailList.js';
import { NoteForm } from './NoteForm.js';
import { Recipients } from './Recipients.js';
import { ReportDeeds } from './ReportDeeds.js';
import { ShareLinks } from './ShareLinks.js';
import { Unprinted } from '../Unprinted.js';
import { useTypedNote } from './use-typed-note.js';

export const oneReportDocument = graphql(`
  query OneReport($id: ID!) {
    waterReport(id: $id) {
      id
      state
      note
      unprinted
      content {
        title
        verdict
        dataVersion
      }
      ...NotedReport
      ...DecidedReport
      ...DiscardedReport
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
            <Opened key={report.id} report={report} emails={emails} onClose={onClose} />
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

interface OpenedProps extends Omit<Props, 'id'> {
  readonly report: NonNullable<OneReportQuery['waterReport']>;
}

function Opened({ report, emails, onClose }: OpenedProps) {
  const { id, note, state, content, unprinted } = report;
  const typed = useTypedNote(id, note);
  return (
    <Section heading={content.verdict} note={content.title}>
      <p className="report-files">
        {(['pdf', 'xlsx', 'csv'] as const).map((kind) => (
          <a key={kind} href={reportFile(id, kind)} target="_blank" rel="noreferrer">
            {kind === 'pdf' ? <FormattedMessage id="reports.preview" /> : kind.toUpperCase()}
          </a>
        ))}
        <span className="soft">
          <FormattedMessage id="reports.dataVersion" values={{ version: content.dataVersion }} />
        </span>
      </p>
      <Unprinted letters={unprinted} />
      <NoteForm report={report} typed={typed} />
      <Recipients report={report} emails={emails} />
      <ReportDeeds report={report} dataVersion={content.dataVersion} isNoteUnkept={typed.isUnkept} />
      <MailList report={report} />
      <ShareLinks report={report} />
      <p className="form-end">
        <Button kind="plain" onClick={onClose}>
          <FormattedMessage id="reports.close" />
        </Button>
        {state === 'draft' && <DiscardDraft report={report} onDone={onClose} />}
      </p>
    </Section>
  );
}
