import { type FormEvent, useState } from 'react';
import { FormattedMessage, type IntlShape, useIntl } from 'react-intl';
import { graphql } from '../../graphql/__generated__/gql.js';
import { useDeed } from '../../page/use-deed.js';
import { Button } from '../../ui/forms/Button.js';
import { TextField } from '../../ui/forms/Field.js';
import { type FormProblem, ProblemList } from '../../ui/forms/ProblemList.js';
import { PageHead } from '../../ui/frame/PageHead.js';
import { ErrorState } from '../../ui/states/States.js';
import { newPasswordProblems, problemOfField } from './judge-credentials.js';
import { PasswordField } from './PasswordField.js';

const foundOrganizationDocument = graphql(`
  mutation FoundOrganization($name: String!, $personName: String!, $email: String!, $password: String!) {
    foundOrganization(name: $name, personName: $personName, email: $email, password: $password) {
      me {
        memberId
      }
    }
  }
`);

const empty = { name: '', personName: '', email: '', password: '' };

function problemsOf(intl: IntlShape, draft: typeof empty): FormProblem[] {
  const needed = {
    name: 'identity.first.nameMissing',
    personName: 'identity.first.personMissing',
    email: 'identity.email.missing',
  } as const;
  const missing = (['name', 'personName', 'email'] as const).filter((field) => !draft[field].trim());
  return [
    ...missing.map((field) => ({ field, words: intl.formatMessage({ id: needed[field] }) })),
    ...newPasswordProblems(intl, draft.password),
  ];
}

/** On an empty server: its first organization and that one's owner. */
export function FirstOrganization({ onEntered }: { readonly onEntered: () => void }) {
  const intl = useIntl();
  const found = useDeed(foundOrganizationDocument);
  const [draft, setDraft] = useState(empty);
  const [problems, setProblems] = useState<readonly FormProblem[]>([]);
  const set = (key: keyof typeof empty) => (value: string) => setDraft((before) => ({ ...before, [key]: value }));
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const wrong = problemsOf(intl, draft);
    setProblems(wrong);
    if (wrong.length === 0 && (await found.run(draft))) onEntered();
  };
  return (
    <>
      <PageHead sentence={intl.formatMessage({ id: 'identity.first.title' })} lede={<FormattedMessage id="identity.first.lede" />} />
      <form className="form" onSubmit={(event) => void submit(event)} noValidate>
        <ProblemList problems={problems} />
        {found.problem ? <ErrorState problem={found.problem} /> : null}
        <TextField
          id="name"
          autoComplete="organization"
          label={intl.formatMessage({ id: 'identity.first.name' })}
          value={draft.name}
          onChange={set('name')}
          problem={problemOfField(problems, 'name')}
        />
        <TextField
          id="personName"
          autoComplete="name"
          label={intl.formatMessage({ id: 'identity.first.person' })}
          value={draft.personName}
          onChange={set('personName')}
          problem={problemOfField(problems, 'personName')}
        />
        <TextField
          id="email"
          type="email"
          autoComplete="username"
          label={intl.formatMessage({ id: 'identity.email' })}
          value={draft.email}
          onChange={set('email')}
          problem={problemOfField(problems, 'email')}
        />
        <PasswordField
          id="password"
          isNew
          value={draft.password}
          onChange={set('password')}
          problem={problemOfField(problems, 'password')}
        />
        <div className="form-end">
          <Button type="submit" kind="main" isBusy={found.isBusy}>
            <FormattedMessage id="identity.first.do" />
          </Button>
        </div>
      </form>
    </>
  );
}
