import { useQuery } from '@apollo/client/react';
import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../graphql/__generated__/gql.js';
import { useDeed } from '../../page/use-deed.js';
import { Button } from '../../ui/forms/Button.js';
import { TextField } from '../../ui/forms/Field.js';
import { Progress } from '../../ui/states/Progress.js';
import { ErrorState } from '../../ui/states/States.js';

const jobsDocument = graphql(`
  query ReportJobs {
    jobs {
      id
      kind
      state
      done
      total
      says
    }
  }
`);
const draftDocument = graphql(`
  mutation DraftReports($fromOn: Date!, $untilOn: Date!) {
    draftReports(fromOn: $fromOn, untilOn: $untilOn) {
      id
    }
  }
`);
const approveDocument = graphql(`
  mutation ApproveReports($ids: [ID!]!) {
    approveReports(ids: $ids) {
      id
    }
  }
`);
const sendDocument = graphql(`
  mutation SendReports($ids: [ID!]!, $onDay: Date) {
    sendReports(ids: $ids, onDay: $onDay) {
      id
      state
      sendAt
    }
  }
`);

interface Props {
  readonly month: string;
  readonly chosen: readonly string[];
  readonly onDone: () => void;
}

const KINDS = ['draft reports', 'approve reports', 'send report'];
const LOOK_EVERY_MS = 1500;
const MONTHS_BACK = { month: 0, quarter: 2, year: 11 } as const;

/** First and last day of the months that end with one. */
export function periodOf(month: string, length: keyof typeof MONTHS_BACK): { fromOn: string; untilOn: string } {
  const [year, at] = [Number(month.slice(0, 4)), Number(month.slice(5, 7))];
  const day = (y: number, m: number, d: number): string => new Date(Date.UTC(y, m, d)).toISOString().slice(0, 10);
  return { fromOn: day(year, at - 1 - MONTHS_BACK[length], 1), untilOn: day(year, at, 0) };
}

/** What is done for many at once: drafts for all clients, approval and sending of those chosen. */
export function DraftAll({ month, chosen, onDone }: Props) {
  const intl = useIntl();
  const [onDay, setOnDay] = useState('');
  const refetch = ['ReportsPage', 'ReportJobs', 'OneReport'];
  const draft = useDeed(draftDocument, { refetch });
  const approve = useDeed(approveDocument, { refetch });
  const send = useDeed(sendDocument, { refetch });
  const ids = [...chosen];
  const problem = draft.problem ?? approve.problem ?? send.problem;
  const sendNow = async (): Promise<void> => {
    if (await send.run({ ids, onDay: onDay || null })) onDone();
  };
  return (
    <div className="report-deeds">
      <p className="report-files">
        {(['month', 'quarter', 'year'] as const).map((length) => (
          <Button key={length} kind="plain" isBusy={draft.isBusy} onClick={() => void draft.run(periodOf(month, length))}>
            {intl.formatMessage({ id: `reports.draft.${length}` })}
          </Button>
        ))}
      </p>
      {ids.length > 0 && (
        <div className="chosen">
          <b>
            <FormattedMessage id="reports.chosen" values={{ count: ids.length }} />
          </b>
          <Button isBusy={approve.isBusy} onClick={() => void approve.run({ ids })}>
            <FormattedMessage id="reports.approve" />
          </Button>
          <TextField label={intl.formatMessage({ id: 'reports.onDay' })} isOptional type="date" value={onDay} onChange={setOnDay} />
          <Button kind="main" isBusy={send.isBusy} onClick={() => void sendNow()}>
            <FormattedMessage id={onDay ? 'reports.sendThen' : 'reports.send'} />
          </Button>
        </div>
      )}
      {problem ? <ErrorState problem={problem} /> : null}
      <UnderWay />
    </div>
  );
}

/** How far the work in the background is, and how the last piece ended. */
function UnderWay() {
  const intl = useIntl();
  const { data } = useQuery(jobsDocument, { pollInterval: LOOK_EVERY_MS, fetchPolicy: 'network-only' });
  const [newest] = (data?.jobs ?? []).filter(({ kind }) => KINDS.includes(kind));
  if (!newest) return null;
  if (newest.state === 'done' || newest.state === 'failed')
    return newest.says ? (
      <p className="soft" role="status">
        {newest.says}
      </p>
    ) : null;
  return <Progress label={intl.formatMessage({ id: 'reports.underWay' })} done={newest.done} total={newest.total || null} />;
}
