import { useState } from 'react';
import { useIntl } from 'react-intl';
import { TextField } from '../../ui/forms/Field.js';
import { Checkbox } from '../../ui/forms/Select.js';

interface Props {
  readonly id: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly isNew?: boolean;
  readonly problem?: string | null | undefined;
}

/** A password that may be pasted, kept by a manager, and looked at. */
export function PasswordField({ id, value, onChange, isNew = false, problem }: Props) {
  const intl = useIntl();
  const [isShown, setShown] = useState(false);
  return (
    <>
      <TextField
        id={id}
        name="password"
        type={isShown ? 'text' : 'password'}
        label={intl.formatMessage({ id: 'identity.password' })}
        hint={isNew && intl.formatMessage({ id: 'identity.password.hint' })}
        autoComplete={isNew ? 'new-password' : 'current-password'}
        value={value}
        onChange={onChange}
        problem={problem}
      />
      <Checkbox label={intl.formatMessage({ id: 'identity.password.show' })} isChecked={isShown} onChange={setShown} />
    </>
  );
}
