import type { ReactNode } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { failureSentence } from '../../../../i18n/problems/problem-sentence.js';
import { Fetched } from '../../../../page/Fetched.js';
import { paths } from '../../../../page/paths.js';
import { Button, ButtonLink } from '../../../../ui/forms/Button.js';
import { PageHead } from '../../../../ui/frame/PageHead.js';
import { Progress } from '../../../../ui/states/Progress.js';
import { EmptyState } from '../../../../ui/states/States.js';
import { CheckedFiles } from './CheckedFiles.js';
import type { CheckedUpload } from './imports.js';
import { hasEnded, useJob } from './use-job.js';

interface Props {
  readonly job: string;
  /** Null where the upload was cleared away meanwhile. */
  readonly upload: CheckedUpload | null;
  readonly onEnd: () => void;
}

/** How far the import is, and how it ended. */
export function ImportUnderWay({ job: id, upload, onEnd }: Props) {
  const intl = useIntl();
  const query = useJob(id);
  const more = (
    <Button kind="plain" onClick={onEnd}>
      <FormattedMessage id="setup.upload.again" />
    </Button>
  );
  return (
    <Fetched query={query}>
      {({ job }) => {
        if (!job) return <EmptyState sentence={intl.formatMessage({ id: 'setup.job.gone' })} action={more} />;
        if (!hasEnded(job.state))
          return (
            <>
              <PageHead sentence={intl.formatMessage({ id: 'setup.job.title' })} lede={<FormattedMessage id="setup.job.lede" />} />
              <Progress label={intl.formatMessage({ id: 'setup.job.rows' })} done={job.done} total={job.total > 0 ? job.total : null} />
            </>
          );
        return (
          <Ended
            isDone={job.state === 'done'}
            says={job.state === 'done' ? (job.says ?? null) : failureSentence(intl.locale, job)}
            upload={upload}
            more={more}
          />
        );
      }}
    </Fetched>
  );
}

interface EndedProps {
  readonly isDone: boolean;
  readonly says: string | null;
  readonly upload: CheckedUpload | null;
  readonly more: ReactNode;
}

function Ended({ isDone, says, upload, more }: EndedProps) {
  const intl = useIntl();
  return (
    <>
      <PageHead
        sentence={intl.formatMessage({ id: isDone ? 'setup.job.done' : 'setup.job.failed' })}
        lede={
          <>
            {says && `${says.replace(/\.$/, '')}. `}
            {isDone && <FormattedMessage id="setup.job.more" />}
          </>
        }
        actions={
          <>
            {isDone && (
              <ButtonLink to={paths.portfolio} kind="main">
                <FormattedMessage id="setup.job.see" />
              </ButtonLink>
            )}
            {more}
          </>
        }
      />
      {upload && <CheckedFiles upload={upload} />}
    </>
  );
}
