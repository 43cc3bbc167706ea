import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import type { PeopleQuery } from '../../../graphql/__generated__/graphql.js';
import { useSays } from '../../../says/use-says.js';
import { useViewer } from '../../../session/viewer.js';
import { MemberDialog } from './MemberDialog.js';

interface Props {
  readonly member: PeopleQuery['members'][number];
  readonly clients: PeopleQuery['clients'];
}

/** One member; the role can be changed, and the membership ended. */
export function MemberRow({ member, clients }: Props) {
  const intl = useIntl();
  const viewer = useViewer();
  const { word } = useSays();
  const [isOpen, setOpen] = useState(false);
  const { id, role, client, person } = member;
  return (
    <tr>
      <td>
        <b>{person.name}</b> <span className="soft xs">{person.email}</span>
      </td>
      <td>
        {word('role', role)}
        {client && ` (${client.name})`}
      </td>
      <td className="num">
        {id === viewer.memberId ? (
          <span className="soft">
            <FormattedMessage id="setup.people.you" />
          </span>
        ) : (
          <button
            type="button"
            className="link"
            aria-label={intl.formatMessage({ id: 'setup.list.changeOf' }, { name: person.name })}
            onClick={() => setOpen(true)}
          >
            <FormattedMessage id="setup.list.change" />
          </button>
        )}
        {isOpen && <MemberDialog member={member} clients={clients} onClose={() => setOpen(false)} />}
      </td>
    </tr>
  );
}
