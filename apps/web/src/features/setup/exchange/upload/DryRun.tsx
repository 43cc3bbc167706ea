import { FormattedMessage, useIntl } from 'react-intl';
import { Button } from '../../../../ui/forms/Button.js';
import { PageHead } from '../../../../ui/frame/PageHead.js';
import { Section } from '../../../../ui/frame/Section.js';
import { ErrorState } from '../../../../ui/states/States.js';
import { CheckedFiles } from './CheckedFiles.js';
import { type CheckedUpload, imports } from './imports.js';
import { ProblemTable } from './ProblemTable.js';
import { useRequest } from './use-request.js';
import { isQuestion } from './whose-file.js';
import { WhoseFiles } from './WhoseFiles.js';

interface Props {
  readonly upload: CheckedUpload;
  readonly onJob: (job: string) => void;
  readonly onEnd: () => void;
  /** The files were checked again, with what was said of them. */
  readonly onChecked: (upload: CheckedUpload) => void;
}

/** What the files would change, before anything is kept. */
export function DryRun({ upload, onJob, onEnd, onChecked }: Props) {
  const intl = useIntl();
  const accept = useRequest(imports.accept);
  const drop = useRequest(imports.drop);
  const sum = (of: 'new' | 'changed' | 'same' | 'wrong'): number => upload.files.reduce((total, file) => total + file[of], 0);
  const hasProblems = upload.problemsTotal > 0;
  const hasGood = sum('new') + sum('changed') + sum('same') > 0;
  const isAsked = upload.files.some((file) => file.problems.some(isQuestion));
  const counts = { added: sum('new'), changed: sum('changed'), wrong: sum('wrong') };
  const keep = async (): Promise<void> => {
    const started = await accept.run(upload.id, hasProblems ? 'good' : 'all');
    if (started) onJob(started.jobId);
  };
  const forget = async (): Promise<void> => {
    if ((await drop.run(upload.id)) !== undefined) onEnd();
  };
  return (
    <>
      <PageHead
        crumb={intl.formatMessage({ id: 'setup.dry.crumb' })}
        sentence={hasGood ? intl.formatMessage({ id: 'setup.dry.title' }, counts) : intl.formatMessage({ id: withoutGood(isAsked) })}
        lede={
          hasGood && (
            <>
              <FormattedMessage id="setup.dry.lede" values={{ same: sum('same') }} />{' '}
              {hasProblems && <FormattedMessage id="setup.dry.problems" values={{ count: upload.problemsTotal }} />}
            </>
          )
        }
        tab={intl.formatMessage({ id: 'frame.setup' })}
        actions={
          <>
            {hasGood && (
              <Button kind="main" isBusy={accept.isBusy} onClick={() => void keep()}>
                <FormattedMessage id={hasProblems ? 'setup.dry.keepGood' : 'setup.dry.keepAll'} />
              </Button>
            )}
            <Button kind={hasGood || isAsked ? 'plain' : 'main'} isBusy={drop.isBusy} onClick={() => void forget()}>
              <FormattedMessage id="setup.dry.keepNothing" />
            </Button>
          </>
        }
      />
      {accept.problem ? <ErrorState problem={accept.problem} /> : null}
      {drop.problem ? <ErrorState problem={drop.problem} /> : null}
      <WhoseFiles upload={upload} onChecked={onChecked} />
      <CheckedFiles upload={upload} />
      <WhatToKnow upload={upload} />
    </>
  );
}

const withoutGood = (isAsked: boolean) => (isAsked ? 'setup.dry.asks' : 'setup.dry.nothingGood');

/** What is wrong, then what keeps no row out. */
function WhatToKnow({ upload: { files, problemsTotal } }: { readonly upload: CheckedUpload }) {
  const intl = useIntl();
  const all = files.flatMap((file) => file.problems);
  const problems = all.filter((problem) => !isQuestion(problem));
  const wrong = problemsTotal - (all.length - problems.length);
  const notices = files.flatMap((file) => file.notices);
  const known = files.reduce((total, file) => total + file.noticesTotal, 0);
  const [shown, hidden] = [problems.length, wrong - problems.length];
  return (
    <div className="after-part">
      {shown > 0 && (
        <Section
          heading={intl.formatMessage({ id: 'setup.problems.title' }, { count: wrong })}
          note={<FormattedMessage id="setup.problems.note" values={{ shown, hidden, total: wrong }} />}
        >
          <ProblemTable problems={problems} name={intl.formatMessage({ id: 'setup.problems.table' })} />
        </Section>
      )}
      {notices.length > 0 && (
        <Section
          heading={intl.formatMessage({ id: 'setup.notices.title' }, { count: known })}
          note={<FormattedMessage id="setup.notices.note" />}
        >
          <ProblemTable problems={notices} name={intl.formatMessage({ id: 'setup.notices.table' })} />
        </Section>
      )}
    </div>
  );
}
