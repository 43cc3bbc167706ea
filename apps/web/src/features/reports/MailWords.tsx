import { FormattedMessage } from 'react-intl';
import { type StatedMail, stateOfMail } from './mail-state.js';

const STATES = ['sent', 'written', 'queued', 'sending', 'refused', 'unknown', 'bounced'] as const;

/** What became of the mails of a report, counted. */
export function MailWords({ mails }: { readonly mails: readonly StatedMail[] }) {
  const counts = STATES.map((state) => [state, mails.filter((mail) => stateOfMail(mail) === state).length] as const).filter(
    ([, count]) => count > 0,
  );
  if (counts.length === 0) return <span className="soft">–</span>;
  return (
    <>
      {counts.map(([state, count], at) => (
        <span key={state}>
          {at > 0 && ', '}
          <FormattedMessage id={`reports.mails.${state}`} values={{ count }} />
        </span>
      ))}
    </>
  );
}
