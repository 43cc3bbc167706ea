import { FormattedMessage } from 'react-intl';

const STATES = ['sent', 'queued', 'sending', 'refused', 'unknown', 'bounced'] as const;

/** What became of the mails of a report, counted. */
export function MailWords({ mails }: { readonly mails: readonly { readonly state: string }[] }) {
  const counts = STATES.map((state) => [state, mails.filter((mail) => mail.state === state).length] as const).filter(
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
