import { useQuery } from '@apollo/client/react';
import { useEffect, useRef } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { failureSentence } from '../../../i18n/problems/problem-sentence.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { Progress } from '../../../ui/states/Progress.js';
import { endedSentence, type Outcome, refusalSentence, refusedIn } from './outcome.js';

export const reportJobsDocument = graphql(`
  query ReportJobs {
    jobs {
      id
      kind
      state
      done
      total
      says
      waitsUntil
      outcome {
        code
        details
      }
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
  /** it begins then */
  readonly waitsUntil?: string | null;
  readonly outcome?: Outcome | null;
}

/** How far the work in the background is, and how the last piece ended; what it changed is asked for again. */
export function UnderWay({ onEnd }: { readonly onEnd: () => void }) {
  const { data } = useQuery(reportJobsDocument, { pollInterval: LOOK_EVERY_MS, fetchPolicy: 'network-only' });
  const jobs = (data?.jobs ?? []).filter((job): job is typeof job & Job => isKind(job.kind));
  useNews(jobs[0] ?? null, onEnd);
  const begun = jobs.filter((job) => !job.waitsUntil);
  return (
    <>
      {told(begun).map((job) => (isOver(job) ? <Over key={job.id} job={job} /> : <Going key={job.id} job={job} />))}
      {KINDS.map((kind) => (
        <Waiting key={kind} kind={kind} jobs={jobs.filter((job) => job.kind === kind && job.waitsUntil)} />
      ))}
    </>
  );
}

const isOver = ({ state }: Job): boolean => state === 'done' || state === 'failed';
const hasTrouble = ({ state, outcome }: Job): boolean => state === 'failed' || refusedIn(outcome).length > 0;

/** The newest of each kind that is news: it goes on, nothing came after it, or it ended in trouble, which later work does not hide. */
function told(jobs: readonly Job[]): Job[] {
  const newest = KINDS.flatMap((kind) => jobs.find((job) => job.kind === kind) ?? []);
  return newest.filter((job) => job === jobs[0] || !isOver(job) || hasTrouble(job));
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

/** What is to begin later: on the day that was named, or to try again what was not taken. */
function Waiting({ kind, jobs }: { readonly kind: Kind; readonly jobs: readonly Job[] }) {
  const intl = useIntl();
  const { moment } = useFormats();
  const [first] = jobs.flatMap(({ waitsUntil }) => waitsUntil ?? []).sort();
  if (first === undefined) return null;
  const count = jobs.reduce((sum, { total }) => sum + Math.max(1, total), 0);
  return (
    <p className="soft">
      <FormattedMessage
        id="reports.job.waits"
        values={{ what: intl.formatMessage({ id: `reports.job.${kind}` }), count, when: moment(first) }}
      />
    </p>
  );
}

function Going({ job: { kind, done, total } }: { readonly job: Job }) {
  const intl = useIntl();
  return <Progress label={intl.formatMessage({ id: `reports.job.${kind}` })} done={done} total={total || null} />;
}

/** How a piece of work ended, in the person's language; what could not be approved is named, with its cause. */
function Over({ job: { kind, state, total, says, outcome } }: { readonly job: Job }) {
  const intl = useIntl();
  const what = intl.formatMessage({ id: `reports.job.${kind}` });
  const ended = endedSentence(intl, outcome);
  const refused = refusedIn(outcome);
  return (
    <div role="status">
      <p className="soft">
        <FormattedMessage id={state === 'failed' ? 'reports.job.failed' : 'reports.job.over'} values={{ what, count: ended ? 0 : total }} />{' '}
        {ended ?? (state === 'failed' ? failureSentence(intl.locale, { says, outcome }) : null)}
      </p>
      {refused.length > 0 && (
        <>
          <p>
            <FormattedMessage id="reports.job.notApproved" values={{ count: refused.length }} />
          </p>
          <ul>
            {refused.map(({ client, code }) => (
              <li key={`${client} ${code}`}>
                {client}: {refusalSentence(intl, code)}
              </li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}
