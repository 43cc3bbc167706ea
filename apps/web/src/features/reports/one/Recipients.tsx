import type { FragmentType } from '@apollo/client';
import { FormattedMessage } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { RecipientsOfReportFragment } from '../../../graphql/__generated__/graphql.js';
import { useDeed } from '../../../page/use-deed.js';
import { useMasked } from '../../../page/use-masked.js';
import { Button } from '../../../ui/forms/Button.js';
import { ErrorState } from '../../../ui/states/States.js';

export const recipientsOfReport = graphql(`
  fragment RecipientsOfReport on WaterReport {
    id
    stoppedAddresses
  }
`);
const mailAgainDocument = graphql(`
  mutation MailAgain($email: String!) {
    mailAgain(email: $email)
  }
`);

interface Props {
  readonly report: FragmentType<RecipientsOfReportFragment>;
  /** the client's addresses */
  readonly emails: readonly string[];
}

/** To whom a report goes, and who wants no more by mail until they ask for it again. */
export function Recipients({ report: masked, emails }: Props) {
  const { stoppedAddresses } = useMasked(recipientsOfReport, masked);
  const again = useDeed(mailAgainDocument, { refetch: ['OneReport'] });
  const letters = new Set(stoppedAddresses.map((email) => email.toLowerCase()));
  const mailed = emails.filter((email) => !letters.has(email.trim().toLowerCase()));
  return (
    <>
      <p className="soft">
        {mailed.length ? (
          <FormattedMessage id="reports.goesTo" values={{ emails: mailed.join(', ') }} />
        ) : (
          <FormattedMessage id={emails.length ? 'reports.allStopped' : 'reports.goesNowhere'} />
        )}
      </p>
      {stoppedAddresses.map((email) => (
        <p key={email}>
          <FormattedMessage id="reports.stopped" values={{ email: <b>{email}</b> }} />{' '}
          <Button kind="plain" isBusy={again.isBusy} onClick={() => void again.run({ email })}>
            <FormattedMessage id="reports.mailAgain" />
          </Button>
        </p>
      ))}
      {again.problem ? <ErrorState problem={again.problem} /> : null}
    </>
  );
}
