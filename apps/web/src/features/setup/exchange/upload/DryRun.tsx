import { FormattedMessage, useIntl } from 'react-intl';
import { Button } from '../../../../ui/forms/Button.js';
import { PageHead } from '../../../../ui/frame/PageHead.js';
import { Section } from '../../../../ui/frame/Section.js';
import { ErrorState } from '../../../../ui/states/States.js';
import { CheckedFiles } from './CheckedFiles.js';
import { type CheckedUpload, imports } from './imports.js';
import { ProblemTable } from './ProblemTable.js';
import { type RowCounts, rowCounts } from './row-counts.js';
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
  const counts = rowCounts(upload);
  const keep = async (): Promise<void> => {
    const started = await accept.run(upload.id, upload.problemsTotal > 0 ? 'good' : 'all');
    if (started) onJob(started.jobId);
  };
  const forget = async (): Promise<void> => {
    if ((await drop.run(upload.id)) !== undefined) onEnd();
  };
  return (
    <>
      <PageHead
        crumb={intl.formatMessage({ id: 'setup.dry.crumb' })}
        sentence={intl.formatMessage({ id: titleOf(counts) }, { ...counts })}
        lede={counts.good > 0 && <Lede counts={counts} />}
        tab={intl.formatMessage({ id: 'frame.setup' })}
        actions={
          <>
            {counts.good > 0 && (
              <Button kind={counts.waiting > 0 ? 'usual' : 'main'} isBusy={accept.isBusy} onClick={() => void keep()}>
                {intl.formatMessage({ id: keepWords(counts) }, { ...counts })}
              </Button>
            )}
            <Button kind={counts.good + counts.waiting > 0 ? 'plain' : 'main'} isBusy={drop.isBusy} onClick={() => void forget()}>
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

function titleOf({ good, waiting }: RowCounts) {
  if (good > 0) return 'setup.dry.title';
  return waiting > 0 ? 'setup.dry.asks' : 'setup.dry.nothingGood';
}

function keepWords({ waiting, problems }: RowCounts) {
  if (waiting > 0) return 'setup.dry.keepOthers';
  return problems > 0 ? 'setup.dry.keepGood' : 'setup.dry.keepAll';
}

/** What is as it stands already, what is wrong, and what becomes of the files that wait. */
function Lede({ counts }: { readonly counts: RowCounts }) {
  return (
    <>
      <FormattedMessage id="setup.dry.lede" values={{ same: counts.same }} />{' '}
      {counts.problems > 0 && <FormattedMessage id="setup.dry.problems" values={{ count: counts.problems }} />}{' '}
      {counts.waiting > 0 && <FormattedMessage id="setup.dry.waiting" values={{ waiting: counts.waiting }} />}
    </>
  );
}

/** What is wrong, then what keeps no row out. */
function WhatToKnow({ upload }: { readonly upload: CheckedUpload }) {
  const intl = useIntl();
  const { files } = upload;
  const problems = files.flatMap((file) => file.problems).filter((problem) => !isQuestion(problem));
  const { problems: wrong } = rowCounts(upload);
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
