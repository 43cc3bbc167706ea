import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { failureSentence } from '../../../i18n/problems/problem-sentence.js';
import { Fetched } from '../../../page/Fetched.js';
import { useDeed } from '../../../page/use-deed.js';
import { Button } from '../../../ui/forms/Button.js';
import { Section } from '../../../ui/frame/Section.js';
import { Progress } from '../../../ui/states/Progress.js';
import { ErrorState } from '../../../ui/states/States.js';
import { hasEnded, useJob } from './upload/use-job.js';

const recomputeDocument = graphql(`
  mutation RecomputeAccounts {
    recomputeAccounts {
      id
    }
  }
`);

/** Every account anew, with how far it is. */
export function RecomputeAll() {
  const intl = useIntl();
  const [job, setJob] = useState<string | null>(null);
  const recompute = useDeed(recomputeDocument);
  const start = async (): Promise<void> => {
    const started = await recompute.run({});
    if (started) setJob(started.recomputeAccounts.id);
  };
  return (
    <Section heading={intl.formatMessage({ id: 'setup.recompute.title' })} note={<FormattedMessage id="setup.recompute.note" />}>
      {recompute.problem ? <ErrorState problem={recompute.problem} /> : null}
      {job && <Recomputing key={job} job={job} />}
      <Button isBusy={recompute.isBusy} onClick={() => void start()}>
        <FormattedMessage id="setup.recompute.do" />
      </Button>
    </Section>
  );
}

function Recomputing({ job: id }: { readonly job: string }) {
  const intl = useIntl();
  const query = useJob(id);
  return (
    <div className="before-part">
      <Fetched query={query}>
        {({ job }) =>
          job && hasEnded(job.state) ? (
            <p role="status">
              <FormattedMessage id={job.state === 'done' ? 'setup.recompute.done' : 'setup.recompute.failed'} />{' '}
              {job.state === 'failed' && failureSentence(intl.locale, job)}
            </p>
          ) : (
            <Progress
              label={intl.formatMessage({ id: 'setup.recompute.under' })}
              done={job?.done ?? 0}
              total={job && job.total > 0 ? job.total : null}
            />
          )
        }
      </Fetched>
    </div>
  );
}
