import { useCallback, useEffect, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Button } from '../../../../ui/forms/Button.js';
import { PageHead } from '../../../../ui/frame/PageHead.js';
import { ErrorState, LoadingState } from '../../../../ui/states/States.js';
import { DryRun } from './DryRun.js';
import { ImportUnderWay } from './ImportUnderWay.js';
import { type CheckedUpload, imports } from './imports.js';
import { useRequest } from './use-request.js';

interface Props {
  readonly id: string;
  readonly job: string | null;
  readonly onJob: (job: string) => void;
  readonly onEnd: () => void;
}

/** An upload: what it would change, then how far the import is. */
export function UploadPage({ id, job, onJob, onEnd }: Props) {
  const intl = useIntl();
  const [upload, setUpload] = useState<CheckedUpload | null>(null);
  const { run, problem } = useRequest(imports.read);
  const fetchUpload = useCallback(async () => {
    const found = await run(id);
    if (found) setUpload(found);
  }, [id, run]);
  useEffect(() => {
    void fetchUpload();
  }, [fetchUpload]);
  if (job) return <ImportUnderWay job={job} upload={upload} onEnd={onEnd} />;
  if (upload) return <DryRun upload={upload} onJob={onJob} onEnd={onEnd} onChecked={setUpload} />;
  if (!problem) return <LoadingState />;
  return (
    <>
      <PageHead sentence={intl.formatMessage({ id: 'setup.upload.gone' })} />
      <ErrorState problem={problem} onRetry={() => void fetchUpload()} />
      <Button kind="main" onClick={onEnd}>
        <FormattedMessage id="setup.upload.again" />
      </Button>
    </>
  );
}
