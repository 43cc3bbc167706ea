import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { reportFile } from '../../../page/paths.js';
import { useDeed } from '../../../page/use-deed.js';
import { Button } from '../../../ui/forms/Button.js';
import { Section } from '../../../ui/frame/Section.js';
import { Progress } from '../../../ui/states/Progress.js';
import { ErrorState } from '../../../ui/states/States.js';
import { Unprinted } from '../Unprinted.js';
import { type DraftNow, useDraftsNow } from './use-drafts-now.js';

const approveDocument = graphql(`
  mutation ApproveReports($ids: [ID!]!, $dataVersions: [String!]!) {
    approveReports(ids: $ids, dataVersions: $dataVersions) {
      id
    }
  }
`);

interface Props {
  readonly ids: readonly string[];
  /** of clients, by their id */
  readonly names: ReadonlyMap<string, string>;
  readonly onEnd: () => void;
}

/** What each chosen draft says now, and of which data: what is approved is this, and nothing that is recorded meanwhile. */
export function LookAtDrafts({ ids, names, onEnd }: Props) {
  const intl = useIntl();
  const drafts = useDraftsNow(ids);
  const approve = useDeed(approveDocument, { refetch: ['ReportsPage', 'ReportJobs', 'OneReport'] });
  const whole = drafts.flatMap((draft) => ('content' in draft ? [draft] : []));
  const approveThem = async (): Promise<void> => {
    const asked = { ids: whole.map(({ id }) => id), dataVersions: whole.map(({ content }) => content.dataVersion) };
    if (await approve.run(asked)) onEnd();
  };
  const isThere = drafts.length >= ids.length;
  return (
    <Section heading={intl.formatMessage({ id: 'reports.look' }, { count: ids.length })} note={<FormattedMessage id="reports.look.why" />}>
      <ul className="mails">
        {drafts.map((draft) => (
          <OneDraft key={draft.id} draft={draft} names={names} />
        ))}
      </ul>
      {!isThere && <Progress label={intl.formatMessage({ id: 'reports.look.under' })} done={drafts.length} total={ids.length} />}
      {approve.problem ? <ErrorState problem={approve.problem} /> : null}
      <p className="form-end">
        {isThere && whole.length > 0 && (
          <Button kind="main" isBusy={approve.isBusy} onClick={() => void approveThem()}>
            <FormattedMessage id="reports.look.approve" values={{ count: whole.length }} />
          </Button>
        )}
        <Button kind="plain" onClick={onEnd}>
          <FormattedMessage id="reports.look.not" />
        </Button>
      </p>
    </Section>
  );
}

function OneDraft({ draft, names }: { readonly draft: DraftNow; readonly names: ReadonlyMap<string, string> }) {
  if (!('content' in draft))
    return (
      <li>
        <ErrorState problem={draft.problem} />
      </li>
    );
  const { id, clientId, content, unprinted } = draft;
  return (
    <li>
      <b>{names.get(clientId) ?? '–'}</b> {content.verdict}{' '}
      <span className="reason">
        <a href={reportFile(id, 'pdf')} target="_blank" rel="noreferrer">
          PDF
        </a>{' '}
        <span className="soft">
          <FormattedMessage id="reports.dataVersion" values={{ version: content.dataVersion }} />
        </span>
      </span>
      <Unprinted letters={unprinted} />
    </li>
  );
}
