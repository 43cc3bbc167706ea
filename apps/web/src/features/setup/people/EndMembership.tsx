import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { useDeed } from '../../../page/use-deed.js';
import { useToast } from '../../../ui/dialogs/Toasts.js';
import { Button } from '../../../ui/forms/Button.js';
import { ErrorState } from '../../../ui/states/States.js';

const retireMemberDocument = graphql(`
  mutation RetireMember($id: ID!, $version: Int!) {
    retireMember(id: $id, version: $version) {
      id
      version
      retiredAt
    }
  }
`);

interface Props {
  readonly id: string;
  readonly version: number;
  readonly name: string;
  readonly onEnded: () => void;
}

/** Ends a membership: one press, and one that says what follows. */
export function EndMembership({ id, version, name, onEnded }: Props) {
  const intl = useIntl();
  const toast = useToast();
  const [isAsked, setAsked] = useState(false);
  const retire = useDeed(retireMemberDocument, { refetch: ['People'] });
  const end = async (): Promise<void> => {
    if (!(await retire.run({ id, version }))) return;
    toast({ words: intl.formatMessage({ id: 'setup.people.ended' }, { name }) });
    onEnded();
  };
  return (
    <div className="after-part">
      {retire.problem ? <ErrorState problem={retire.problem} /> : null}
      {isAsked && (
        <p>
          <FormattedMessage id="setup.people.endAsk" values={{ name }} />
        </p>
      )}
      <Button kind="plain" isBusy={retire.isBusy} onClick={() => (isAsked ? void end() : setAsked(true))}>
        <FormattedMessage id={isAsked ? 'setup.people.endDo' : 'setup.people.end'} />
      </Button>
    </div>
  );
}
