import { useIntl } from 'react-intl';
import type { Role } from '../../../graphql/__generated__/graphql.js';
import { RadioList, Select } from '../../../ui/forms/Select.js';

interface Props {
  readonly role: Role;
  readonly clientId: string;
  readonly clients: readonly { readonly id: string; readonly name: string }[];
  readonly onChange: (change: { readonly role?: Role; readonly clientId?: string }) => void;
}

const ROLES: readonly Role[] = ['owner', 'office', 'crewLead', 'technician', 'client'];

/** What a member may do; a client's member belongs to one client. */
export function RoleFields({ role, clientId, clients, onChange }: Props) {
  const intl = useIntl();
  return (
    <div className="form">
      <RadioList
        label={intl.formatMessage({ id: 'setup.people.role' })}
        value={role}
        choices={ROLES.map((one) => ({
          value: one,
          words: intl.formatMessage({ id: `role.${one}` }),
          hint: intl.formatMessage({ id: `setup.role.${one}` }),
        }))}
        onChange={(next) => onChange({ role: next })}
      />
      {role === 'client' && (
        <Select
          label={intl.formatMessage({ id: 'setup.people.client' })}
          value={clientId}
          choices={[
            { value: '', words: intl.formatMessage({ id: 'setup.pick' }) },
            ...clients.map(({ id, name }) => ({ value: id, words: name })),
          ]}
          onChange={(next) => onChange({ clientId: next })}
        />
      )}
    </div>
  );
}
