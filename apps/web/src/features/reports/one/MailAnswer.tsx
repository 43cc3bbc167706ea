import { FormattedMessage } from 'react-intl';

/** What the product itself says of a mail; everything else is the mail server's own words. */
const OURS = ['no-answer', 'wants-no-more', 'address-gone', 'in-outbox', 'not-handed-over', 'given-up'] as const;

/** How a mail ended: in the person's language where the product says it, as the server wrote it where the server does. */
export function MailAnswer({ answer }: { readonly answer: string }) {
  const ours = OURS.find((code) => answer === code || answer.startsWith(`${code}: `));
  if (!ours) return answer;
  return <FormattedMessage id={`reports.answer.${ours}`} values={{ rest: answer.slice(ours.length + 2) }} />;
}
