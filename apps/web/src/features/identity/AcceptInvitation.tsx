import { type FormEvent, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../graphql/__generated__/gql.js';
import { useDeed } from '../../page/use-deed.js';
import { Button } from '../../ui/forms/Button.js';
import { type FormProblem, ProblemList } from '../../ui/forms/ProblemList.js';
import { PageHead } from '../../ui/frame/PageHead.js';
import { ErrorState } from '../../ui/states/States.js';
import { newPasswordProblems, problemOfField } from './judge-credentials.js';
import { PasswordField } from './PasswordField.js';

const acceptInvitationDocument = graphql(`
  mutation AcceptInvitation($link: String!, $password: String!) {
    acceptInvitation(link: $link, password: $password) {
      me {
        memberId
      }
    }
  }
`);

interface Props {
  readonly link: string;
  readonly invitation: { readonly email: string; readonly name: string; readonly organizationName: string };
  readonly onEntered: () => void;
}

/** Who invites, and the password from which on the person signs in. */
export function AcceptInvitation({ link, invitation: { email, name, organizationName }, onEntered }: Props) {
  const intl = useIntl();
  const accept = useDeed(acceptInvitationDocument);
  const [password, setPassword] = useState('');
  const [problems, setProblems] = useState<readonly FormProblem[]>([]);
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const wrong = newPasswordProblems(intl, password);
    setProblems(wrong);
    if (wrong.length === 0 && (await accept.run({ link, password }))) onEntered();
  };
  return (
    <>
      <PageHead
        sentence={intl.formatMessage({ id: 'identity.invitation.title' }, { organization: organizationName, name })}
        lede={<FormattedMessage id="identity.invitation.lede" values={{ email }} />}
      />
      <form className="form" onSubmit={(event) => void submit(event)} noValidate>
        <ProblemList problems={problems} />
        {accept.problem ? <ErrorState problem={accept.problem} /> : null}
        {/* A password manager keeps the password under this address. */}
        <input type="email" name="email" autoComplete="username" value={email} readOnly hidden />
        <PasswordField id="password" isNew value={password} onChange={setPassword} problem={problemOfField(problems, 'password')} />
        <div className="form-end">
          <Button type="submit" kind="main" isBusy={accept.isBusy}>
            <FormattedMessage id="identity.invitation.do" />
          </Button>
        </div>
      </form>
    </>
  );
}
