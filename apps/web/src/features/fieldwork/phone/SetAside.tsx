import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Button } from '../../../ui/forms/Button.js';
import { TextField } from '../../../ui/forms/Field.js';

/** Lays a refused thing aside, with why: it stays on the phone, and is counted no more. */
export function SetAside({ onSetAside }: { readonly onSetAside: (why: string) => void }) {
  const intl = useIntl();
  const [why, setWhy] = useState<string | null>(null);
  const [isAsked, setAsked] = useState(false);
  if (why === null)
    return (
      <Button kind="plain" onClick={() => setWhy('')}>
        <FormattedMessage id="field.refused.setAside" />
      </Button>
    );
  const lay = (): void => {
    setAsked(true);
    if (why.trim() !== '') onSetAside(why.trim());
  };
  return (
    <div className="stack">
      <TextField
        label={intl.formatMessage({ id: 'field.refused.why' })}
        problem={isAsked && why.trim() === '' ? intl.formatMessage({ id: 'field.refused.whyNeeded' }) : null}
        value={why}
        onChange={setWhy}
      />
      <Button onClick={lay}>
        <FormattedMessage id="field.refused.setAside" />
      </Button>
    </div>
  );
}
