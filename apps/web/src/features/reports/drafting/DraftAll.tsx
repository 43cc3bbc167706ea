import { useRef, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { useDeed } from '../../../page/use-deed.js';
import { Button } from '../../../ui/forms/Button.js';
import { TextField } from '../../../ui/forms/Field.js';
import { ErrorState } from '../../../ui/states/States.js';
import { LookAtDrafts } from './LookAtDrafts.js';
import { LENGTHS, periodOf } from './period.js';

const draftDocument = graphql(`
  mutation DraftReports($fromOn: Date!, $untilOn: Date!) {
    draftReports(fromOn: $fromOn, untilOn: $untilOn) {
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
  /** no report ends with the month yet: drafting is then the page's main deed */
  readonly isEmpty: boolean;
  readonly drafts: readonly string[];
  readonly approved: readonly string[];
  /** of clients, by their id */
  readonly names: ReadonlyMap<string, string>;
  readonly onDone: () => void;
}

const REFETCH = ['ReportsPage', 'ReportJobs', 'OneReport'];

/** What is done for many at once: drafts for all clients, approval and sending of those chosen. */
export function DraftAll({ month, isEmpty, drafts, approved, names, onDone }: Props) {
  const intl = useIntl();
  const draft = useDeed(draftDocument, { refetch: REFETCH });
  return (
    <div className="report-deeds">
      <p className="report-files">
        {LENGTHS.map((length) => (
          <Button
            key={length}
            kind={isEmpty && length === 'month' ? 'main' : 'plain'}
            isBusy={draft.isBusy}
            onClick={() => void draft.run(periodOf(month, length))}
          >
            {intl.formatMessage({ id: `reports.draft.${length}` })}
          </Button>
        ))}
      </p>
      {drafts.length + approved.length > 0 && <Chosen drafts={drafts} approved={approved} names={names} onDone={onDone} />}
      {draft.problem ? <ErrorState problem={draft.problem} /> : null}
    </div>
  );
}

/** Shows what those of the chosen say that are drafts, to approve them; and sends those that are approved: now, or in the morning of a day. */
function Chosen({ drafts, approved, names, onDone }: Pick<Props, 'drafts' | 'approved' | 'names' | 'onDone'>) {
  const intl = useIntl();
  const [onDay, setOnDay] = useState('');
  const [looked, setLooked] = useState<readonly string[] | null>(null);
  const place = useRef<HTMLDivElement>(null);
  const send = useDeed(sendDocument, { refetch: REFETCH });
  const sendThem = async (): Promise<void> => {
    if (await send.run({ ids: [...approved], onDay: onDay || null })) onDone();
  };
  // The list of drafts ends far down; how the approval goes is told up here.
  const endLook = (): void => {
    setLooked(null);
    place.current?.focus();
  };
  return (
    <>
      <div className="chosen" ref={place} tabIndex={-1}>
        <b>
          <FormattedMessage id="reports.chosen" values={{ count: drafts.length + approved.length }} />
        </b>
        {drafts.length > 0 && (
          <Button kind={approved.length ? 'usual' : 'main'} onClick={() => setLooked(drafts)}>
            <FormattedMessage id="reports.approveCount" values={{ count: drafts.length }} />
          </Button>
        )}
        {approved.length > 0 && (
          <>
            <TextField label={intl.formatMessage({ id: 'reports.onDay' })} isOptional type="date" value={onDay} onChange={setOnDay} />
            <Button kind="main" isBusy={send.isBusy} onClick={() => void sendThem()}>
              <FormattedMessage id={onDay ? 'reports.sendThenCount' : 'reports.sendCount'} values={{ count: approved.length }} />
            </Button>
          </>
        )}
        {send.problem ? <ErrorState problem={send.problem} /> : null}
      </div>
      {looked && <LookAtDrafts key={looked.join()} ids={looked} names={names} onEnd={endLook} />}
    </>
  );
}
