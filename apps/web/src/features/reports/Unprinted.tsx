import { FormattedMessage } from 'react-intl';

/** Letters of a report for which its PDF has no sign, said before it is approved. */
export function Unprinted({ letters }: { readonly letters: string }) {
  if (!letters) return null;
  return (
    <p role="note">
      <FormattedMessage id="reports.unprinted" values={{ letters: [...letters].join(' ') }} />
    </p>
  );
}
