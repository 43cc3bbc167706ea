import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { useDeed } from '../../../page/use-deed.js';
import { useToast } from '../../../ui/dialogs/Toasts.js';
import { Button } from '../../../ui/forms/Button.js';
import { ErrorState } from '../../../ui/states/States.js';

const withdrawInvitationDocument = graphql(`
  mutation WithdrawInvitation($id: ID!) {
    withdrawInvitation(id: $id) {
      id
    }
  }
`);

/** Takes an invitation back: one press, and one that says what follows. */
export function WithdrawInvitation({ id, name }: { readonly id: string; readonly name: string }) {
  const intl = useIntl();
  const toast = useToast();
  const [isAsked, setAsked] = useState(false);
  const withdraw = useDeed(withdrawInvitationDocument, { refetch: ['People'] });
  const take = async (): Promise<void> => {
    if (await withdraw.run({ id })) toast({ words: intl.formatMessage({ id: 'setup.people.withdrawn' }, { name }) });
  };
  return (
    <>
      {withdraw.problem ? <ErrorState problem={withdraw.problem} /> : null}
      <Button kind="plain" isBusy={withdraw.isBusy} onClick={() => (isAsked ? void take() : setAsked(true))}>
        <FormattedMessage id={isAsked ? 'setup.people.withdrawDo' : 'setup.people.withdraw'} /> <span className="vh">{name}</span>
      </Button>
    </>
  );
}
