import { type FormEvent, useState } from 'react';
import { FormattedMessage, type IntlShape, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { useDeed } from '../../../page/use-deed.js';
import { useViewer } from '../../../session/viewer.js';
import { Button } from '../../../ui/forms/Button.js';
import { type FormProblem, ProblemList } from '../../../ui/forms/ProblemList.js';
import { Section } from '../../../ui/frame/Section.js';
import { ErrorState } from '../../../ui/states/States.js';
import { type InviteDraft, InviteFields } from './InviteFields.js';
import { InvitationLink } from './InvitationLink.js';

const inviteMemberDocument = graphql(`
  mutation InviteMember($name: String!, $email: String!, $role: Role!, $language: Language, $clientId: ID) {
    inviteMember(name: $name, email: $email, role: $role, language: $language, clientId: $clientId) {
      link
      invitation {
        id
        name
        email
      }
    }
  }
`);

/** What must be said before somebody is invited. */
const missingOf = (intl: IntlShape, draft: InviteDraft): FormProblem[] => [
  ...(draft.name.trim() ? [] : [{ field: 'invite-name', words: intl.formatMessage({ id: 'setup.invite.noName' }) }]),
  ...(draft.email.trim() ? [] : [{ field: 'invite-email', words: intl.formatMessage({ id: 'setup.invite.noEmail' }) }]),
  ...(draft.role !== 'client' || draft.clientId ? [] : [{ words: intl.formatMessage({ id: 'setup.invite.noClient' }) }]),
];

/** Invites somebody: the link is shown once, to be sent by whoever invites. */
export function InviteForm({ clients }: { readonly clients: readonly { readonly id: string; readonly name: string }[] }) {
  const intl = useIntl();
  const viewer = useViewer();
  const empty: InviteDraft = { name: '', email: '', role: 'crewLead', clientId: '', language: viewer.organization.language };
  const invite = useDeed(inviteMemberDocument, { refetch: ['People'] });
  const [draft, setDraft] = useState(empty);
  const [problems, setProblems] = useState<readonly FormProblem[]>([]);
  const [made, setMade] = useState<{ link: string; name: string } | null>(null);
  const set = (change: Partial<InviteDraft>): void => setDraft((before) => ({ ...before, ...change }));
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const missing = missingOf(intl, draft);
    setProblems(missing);
    if (missing.length > 0) return;
    const { clientId, ...said } = draft;
    const answer = await invite.run({ ...said, clientId: draft.role === 'client' ? clientId : null });
    if (!answer) return;
    setMade({ link: answer.inviteMember.link, name: answer.inviteMember.invitation.name });
    setDraft(empty);
  };
  return (
    <Section heading={intl.formatMessage({ id: 'setup.invite.title' })} note={<FormattedMessage id="setup.invite.note" />}>
      {made && <InvitationLink link={made.link} name={made.name} />}
      <form className="form" onSubmit={(event) => void submit(event)} noValidate>
        <ProblemList problems={problems} />
        {invite.problem ? <ErrorState problem={invite.problem} /> : null}
        <InviteFields draft={draft} set={set} problems={problems} clients={clients} />
        <div className="form-end">
          <Button type="submit" kind="main" isBusy={invite.isBusy}>
            <FormattedMessage id="setup.invite.do" />
          </Button>
        </div>
      </form>
    </Section>
  );
}
