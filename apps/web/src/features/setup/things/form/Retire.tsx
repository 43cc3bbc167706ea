import { useState } from 'react';
import { FormattedMessage } from 'react-intl';
import { Button } from '../../../../ui/forms/Button.js';

/** Takes a thing out of use: one press, and one that says what stays. */
export function Retire({ onRetire }: { readonly onRetire: () => void }) {
  const [isAsked, setAsked] = useState(false);
  if (!isAsked)
    return (
      <Button kind="plain" onClick={() => setAsked(true)}>
        <FormattedMessage id="setup.retire" />
      </Button>
    );
  return (
    <span role="group">
      <FormattedMessage id="setup.retire.ask" />{' '}
      <Button kind="plain" onClick={onRetire}>
        <FormattedMessage id="setup.retire.do" />
      </Button>
    </span>
  );
}
