import type { FragmentType } from '@apollo/client';
import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { DecidedReportFragment } from '../../../graphql/__generated__/graphql.js';
import { useDeed } from '../../../page/use-deed.js';
import { useMasked } from '../../../page/use-masked.js';
import { useToast } from '../../../ui/dialogs/Toasts.js';
import { Button } from '../../../ui/forms/Button.js';
import { ErrorState } from '../../../ui/states/States.js';

export const decidedReport = graphql(`
  fragment DecidedReport on WaterReport {
    id
    version
    state
  }
`);
const approveDocument = graphql(`
  mutation ApproveReport($id: ID!, $version: Int!, $dataVersion: String!) {
    approveReport(id: $id, version: $version, dataVersion: $dataVersion) {
      __typename
      ... on WaterReport {
        id
        version
        state
      }
    }
  }
`);
const reopenDocument = graphql(`
  mutation ReopenReport($id: ID!, $version: Int!) {
    reopenReport(id: $id, version: $version) {
      __typename
      ... on WaterReport {
        id
        version
        state
      }
    }
  }
`);
const sendDocument = graphql(`
  mutation SendOneReport($ids: [ID!]!) {
    sendReports(ids: $ids) {
      id
      version
      state
    }
  }
`);

interface Props {
  readonly report: FragmentType<DecidedReportFragment>;
  /** of the figures that are on the screen: what is approved is what was looked at */
  readonly dataVersion: string;
  /** a note is typed that would not be in what is approved */
  readonly isNoteUnkept: boolean;
}

/** The next step of a report, and the way back as long as there is one. */
export function ReportDeeds({ report: masked, dataVersion, isNoteUnkept }: Props) {
  const intl = useIntl();
  const toast = useToast();
  const [isHeldByNote, setHeldByNote] = useState(false);
  const { id, version, state } = useMasked(decidedReport, masked);
  const refetch = ['OneReport', 'ReportsPage'];
  const approve = useDeed(approveDocument, { refetch });
  const reopen = useDeed(reopenDocument, { refetch });
  const send = useDeed(sendDocument, { refetch });
  const told = (outcome: { readonly __typename: string } | undefined): void => {
    if (outcome?.__typename === 'ChangedMeanwhile') toast({ words: intl.formatMessage({ id: 'reports.changedMeanwhile' }) });
  };
  const approveIt = async (): Promise<void> => {
    setHeldByNote(isNoteUnkept);
    if (!isNoteUnkept) told((await approve.run({ id, version, dataVersion }))?.approveReport);
  };
  const reopenIt = async (): Promise<void> => told((await reopen.run({ id, version }))?.reopenReport);
  const problem = approve.problem ?? reopen.problem ?? send.problem;
  return (
    <>
      <p className="form-end">
        {state === 'draft' && (
          <Button kind="main" isBusy={approve.isBusy} onClick={() => void approveIt()}>
            <FormattedMessage id="reports.approve" />
          </Button>
        )}
        {state === 'sent' && (
          <Button kind="plain" isBusy={send.isBusy} onClick={() => void send.run({ ids: [id] })}>
            <FormattedMessage id="reports.sendMore" />
          </Button>
        )}
        {state === 'approved' && (
          <>
            <Button kind="main" isBusy={send.isBusy} onClick={() => void send.run({ ids: [id] })}>
              <FormattedMessage id="reports.send" />
            </Button>
            <Button kind="plain" isBusy={reopen.isBusy} onClick={() => void reopenIt()}>
              <FormattedMessage id="reports.reopen" />
            </Button>
          </>
        )}
      </p>
      {isHeldByNote && isNoteUnkept ? (
        <p className="state failed" role="alert">
          <FormattedMessage id="reports.noteUnkept" />
        </p>
      ) : null}
      {problem ? <ErrorState problem={problem} /> : null}
    </>
  );
}
