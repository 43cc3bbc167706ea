import { useIntl } from 'react-intl';
import type { Language, Role } from '../../../graphql/__generated__/graphql.js';
import { TextField } from '../../../ui/forms/Field.js';
import type { FormProblem } from '../../../ui/forms/ProblemList.js';
import { RadioList } from '../../../ui/forms/Select.js';
import { RoleFields } from './RoleFields.js';

/** Somebody to be invited, as typed. */
export interface InviteDraft {
  readonly name: string;
  readonly email: string;
  readonly role: Role;
  readonly clientId: string;
  readonly language: Language;
}

interface Props {
  readonly draft: InviteDraft;
  readonly set: (change: Partial<InviteDraft>) => void;
  readonly problems: readonly FormProblem[];
  readonly clients: readonly { readonly id: string; readonly name: string }[];
}

/** Who is invited, and as what. */
export function InviteFields({ draft, set, problems, clients }: Props) {
  const intl = useIntl();
  const problemOf = (field: string): string | null => problems.find((one) => one.field === field)?.words ?? null;
  return (
    <>
      <TextField
        id="invite-name"
        label={intl.formatMessage({ id: 'setup.people.name' })}
        autoComplete="off"
        value={draft.name}
        onChange={(name) => set({ name })}
        problem={problemOf('invite-name')}
      />
      <TextField
        id="invite-email"
        type="email"
        label={intl.formatMessage({ id: 'identity.email' })}
        autoComplete="off"
        value={draft.email}
        onChange={(email) => set({ email })}
        problem={problemOf('invite-email')}
      />
      <RoleFields role={draft.role} clientId={draft.clientId} clients={clients} onChange={set} />
      <RadioList
        label={intl.formatMessage({ id: 'setup.field.language' })}
        value={draft.language}
        choices={(['en', 'es'] as const).map((language) => ({
          value: language,
          words: intl.formatMessage({ id: `language.${language}` }),
        }))}
        onChange={(language) => set({ language })}
      />
    </>
  );
}
