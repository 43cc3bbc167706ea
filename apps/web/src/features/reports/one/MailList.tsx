import type { FragmentType } from '@apollo/client';
import { FormattedMessage } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { MailedReportFragment, MailFound } from '../../../graphql/__generated__/graphql.js';
import { useDeed } from '../../../page/use-deed.js';
import { useMasked } from '../../../page/use-masked.js';
import { Button } from '../../../ui/forms/Button.js';
import { ErrorState } from '../../../ui/states/States.js';
import type { MessageId } from '../../../i18n/catalogue.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { stateOfMail } from '../mail-state.js';
import { MailAnswer } from './MailAnswer.js';

export const mailedReport = graphql(`
  fragment MailedReport on WaterReport {
    id
    mails {
      id
      recipient
      state
      answer
      attempts
      nextTryAt
    }
  }
`);
const settleDocument = graphql(`
  mutation SettleMail($id: ID!, $found: MailFound!) {
    settleMail(id: $id, found: $found) {
      id
      state
      answer
    }
  }
`);

/** What a person may say of a mail, by what is known of it. */
const VERDICTS: Readonly<Record<string, readonly MailFound[]>> = {
  unknown: ['arrived', 'sendAgain', 'bounced'],
  refused: ['sendAgain'],
  bounced: ['sendAgain'],
  sent: ['bounced'],
};

/** Each mail of a report, what the server said, and what a person found out. */
export function MailList({ report: masked }: { readonly report: FragmentType<MailedReportFragment> }) {
  const { moment } = useFormats();
  const { mails } = useMasked(mailedReport, masked);
  const settle = useDeed(settleDocument, { refetch: ['OneReport', 'ReportsPage'] });
  if (mails.length === 0) return null;
  return (
    <>
      <ul className="mails">
        {mails.map(({ id, recipient, state, answer, attempts, nextTryAt }) => (
          <li key={id}>
            <b>{recipient}</b> <FormattedMessage id={`reports.mail.${stateOfMail({ state, answer })}` as MessageId} />
            {state === 'queued' && attempts > 0 && (
              <span className="soft">
                {' '}
                <FormattedMessage id="reports.mail.again" values={{ count: attempts, when: moment(nextTryAt) }} />
              </span>
            )}
            {answer && (
              <span className="soft">
                {' '}
                <MailAnswer answer={answer} />
              </span>
            )}
            {(VERDICTS[state] ?? []).map((verdict) => (
              <Button key={verdict} kind="plain" isBusy={settle.isBusy} onClick={() => void settle.run({ id, found: verdict })}>
                <FormattedMessage id={`reports.found.${verdict}`} />
              </Button>
            ))}
          </li>
        ))}
      </ul>
      {settle.problem ? <ErrorState problem={settle.problem} /> : null}
    </>
  );
}
