import { useQuery } from '@apollo/client/react';
import { useEffect, useRef } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { Progress } from '../../../ui/states/Progress.js';

export const reportJobsDocument = graphql(`
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

const KINDS = ['draft reports', 'approve reports', 'send report'] as const;
type Kind = (typeof KINDS)[number];
const isKind = (kind: string): kind is Kind => KINDS.some((one) => one === kind);
const LOOK_EVERY_MS = 1500;

interface Job {
  readonly id: string;
  readonly kind: Kind;
  readonly state: string;
  readonly done: number;
  readonly total: number;
  readonly says?: string | null;
}

/** How far the work in the background is, and how the last piece ended; what it changed is asked for again. */
export function UnderWay({ onEnd }: { readonly onEnd: () => void }) {
  const { data } = useQuery(reportJobsDocument, { pollInterval: LOOK_EVERY_MS, fetchPolicy: 'network-only' });
  const newest = (data?.jobs ?? []).find((job): job is typeof job & Job => isKind(job.kind)) ?? null;
  useNews(newest, onEnd);
  if (!newest) return null;
  return newest.state === 'done' || newest.state === 'failed' ? <Over job={newest} /> : <Going job={newest} />;
}

/** The first look tells what was there before this page; from then on every step is news. */
function useNews(newest: Job | null, onNews: () => void): void {
  const seen = useRef<string | null>(null);
  const now = newest && `${newest.id} ${newest.state} ${newest.done}`;
  useEffect(() => {
    if (seen.current !== null && seen.current !== now) onNews();
    seen.current = now;
  }, [now, onNews]);
}

function Going({ job: { kind, done, total } }: { readonly job: Job }) {
  const intl = useIntl();
  return <Progress label={intl.formatMessage({ id: `reports.job.${kind}` })} done={done} total={total || null} />;
}

/** How a piece of work ended; what could not be approved is named as the server names it. */
function Over({ job: { kind, state, total, says } }: { readonly job: Job }) {
  const intl = useIntl();
  const what = intl.formatMessage({ id: `reports.job.${kind}` });
  const [, notApproved] = /not approved: ([^;]*)/.exec(says ?? '') ?? [];
  return (
    <p className="soft" role="status">
      <FormattedMessage id={state === 'failed' ? 'reports.job.failed' : 'reports.job.over'} values={{ what, count: total }} />
      {state === 'failed' && says ? ` ${says}` : null}
      {notApproved ? <> {intl.formatMessage({ id: 'reports.job.notApproved' }, { names: notApproved })}</> : null}
    </p>
  );
}
