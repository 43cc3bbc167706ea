import { FormattedMessage, useIntl } from 'react-intl';
import type { PeopleQuery } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useSays } from '../../../says/use-says.js';
import { Head, Table } from '../../../ui/tables/Table.js';
import { MemberRow } from './MemberRow.js';
import { WithdrawInvitation } from './WithdrawInvitation.js';

type Props = Pick<PeopleQuery, 'members' | 'clients' | 'invitations'>;

/** Members with their roles; under them, those who have not answered yet. */
export function MemberList({ members, clients, invitations }: Props) {
  const intl = useIntl();
  const { moment } = useFormats();
  const { word } = useSays();
  return (
    <div className="narrow">
      <Table
        name={intl.formatMessage({ id: 'setup.people.table' })}
        head={
          <tr>
            <Head>
              <FormattedMessage id="setup.people.name" />
            </Head>
            <Head>
              <FormattedMessage id="setup.people.role" />
            </Head>
            <Head>
              <span className="vh">
                <FormattedMessage id="setup.list.do" />
              </span>
            </Head>
          </tr>
        }
      >
        {members.map((member) => (
          <MemberRow key={member.id} member={member} clients={clients} />
        ))}
        {invitations.map(({ id, name, email, role, expiresAt }) => (
          <tr key={id}>
            <td>
              <b>{name}</b> <span className="soft xs">{email}</span>
            </td>
            <td>{word('role', role)}</td>
            <td className="soft">
              <FormattedMessage id="setup.people.invitedUntil" values={{ when: moment(expiresAt) }} />{' '}
              <WithdrawInvitation id={id} name={name} />
            </td>
          </tr>
        ))}
      </Table>
    </div>
  );
}
