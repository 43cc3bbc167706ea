import { type FormEvent, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Button } from '../../ui/forms/Button.js';
import { TextField } from '../../ui/forms/Field.js';
import { type FormProblem, ProblemList } from '../../ui/forms/ProblemList.js';
import { ErrorState } from '../../ui/states/States.js';
import { missingOf, problemOfField } from './judge-credentials.js';
import { PasswordField } from './PasswordField.js';
import type { SignIn } from './use-sign-in.js';

/** E-mail and password. */
export function SignInForm({ signIn }: { readonly signIn: SignIn }) {
  const intl = useIntl();
  const [email, setEmail] = useState('');
  const [password, setPassword] = useState('');
  const [missing, setMissing] = useState<readonly FormProblem[]>([]);
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const found = missingOf(intl, email, password);
    setMissing(found);
    if (found.length === 0) void signIn.run(email, password);
  };
  const refused = signIn.refusal ? [{ field: 'password', words: signIn.refusal }] : [];
  return (
    <form className="form" onSubmit={submit} noValidate>
      <ProblemList problems={missing.length > 0 ? missing : refused} />
      {signIn.problem ? <ErrorState problem={signIn.problem} /> : null}
      <TextField
        id="email"
        name="email"
        type="email"
        autoComplete="username"
        label={intl.formatMessage({ id: 'identity.email' })}
        value={email}
        onChange={setEmail}
        problem={problemOfField(missing, 'email')}
      />
      <PasswordField id="password" value={password} onChange={setPassword} problem={problemOfField(missing, 'password')} />
      <div className="form-end">
        <Button type="submit" kind="main" isBusy={signIn.isBusy}>
          <FormattedMessage id="identity.signIn.do" />
        </Button>
      </div>
    </form>
  );
}
