import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { PeopleQuery, Role } from '../../../graphql/__generated__/graphql.js';
import { useDeed } from '../../../page/use-deed.js';
import { Dialog } from '../../../ui/dialogs/Dialog.js';
import { useToast } from '../../../ui/dialogs/Toasts.js';
import { Button } from '../../../ui/forms/Button.js';
import { ProblemList } from '../../../ui/forms/ProblemList.js';
import { ErrorState } from '../../../ui/states/States.js';
import { EndMembership } from './EndMembership.js';
import { RoleFields } from './RoleFields.js';

const changeMemberDocument = graphql(`
  mutation ChangeMember($id: ID!, $version: Int!, $role: Role!, $clientId: ID) {
    changeMember(id: $id, version: $version, role: $role, clientId: $clientId) {
      id
      version
      role
      client {
        id
        name
      }
    }
  }
`);

interface Props {
  readonly member: PeopleQuery['members'][number];
  readonly clients: PeopleQuery['clients'];
  readonly onClose: () => void;
}

/** Gives a member another role, or ends the membership. */
export function MemberDialog({ member: { id, version, role, client, person }, clients, onClose }: Props) {
  const intl = useIntl();
  const toast = useToast();
  const [draft, setDraft] = useState<{ role: Role; clientId: string }>({ role, clientId: client?.id ?? '' });
  const [isMissing, setMissing] = useState(false);
  const change = useDeed(changeMemberDocument, { refetch: ['People'] });
  const save = async (): Promise<void> => {
    const missing = draft.role === 'client' && !draft.clientId;
    setMissing(missing);
    if (missing) return;
    if (!(await change.run({ id, version, role: draft.role, clientId: draft.role === 'client' ? draft.clientId : null }))) return;
    toast({ words: intl.formatMessage({ id: 'setup.people.changed' }, { name: person.name }) });
    onClose();
  };
  return (
    <Dialog
      isOpen
      heading={intl.formatMessage({ id: 'setup.people.change' }, { name: person.name })}
      onClose={onClose}
      actions={
        <Button kind="main" isBusy={change.isBusy} onClick={() => void save()}>
          <FormattedMessage id="setup.save" />
        </Button>
      }
    >
      <ProblemList problems={isMissing ? [{ words: intl.formatMessage({ id: 'setup.invite.noClient' }) }] : []} />
      {change.problem ? <ErrorState problem={change.problem} /> : null}
      <RoleFields role={draft.role} clientId={draft.clientId} clients={clients} onChange={(next) => setDraft({ ...draft, ...next })} />
      <EndMembership id={id} version={version} name={person.name} onEnded={onClose} />
    </Dialog>
  );
}
