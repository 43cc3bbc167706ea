import { useQuery } from '@apollo/client/react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { Fetched } from '../../../page/Fetched.js';
import { PageHead } from '../../../ui/frame/PageHead.js';
import { InviteForm } from './InviteForm.js';
import { MemberList } from './MemberList.js';

const peopleDocument = graphql(`
  query People {
    members {
      id
      version
      role
      retiredAt
      client {
        id
        name
      }
      person {
        id
        name
        email
      }
    }
    invitations {
      id
      name
      email
      role
      expiresAt
    }
    clients {
      id
      name
    }
  }
`);

/** Who belongs to the organization, and who is invited. */
export function PeoplePage() {
  const intl = useIntl();
  const query = useQuery(peopleDocument, { fetchPolicy: 'cache-and-network' });
  return (
    <Fetched query={query}>
      {({ members, invitations, clients }) => (
        <>
          <PageHead
            sentence={intl.formatMessage({ id: 'setup.people.title' }, { members: members.length, invited: invitations.length })}
            lede={<FormattedMessage id="setup.people.lede" />}
            tab={intl.formatMessage({ id: 'setup.nav.people' })}
          />
          <MemberList members={members} clients={clients} invitations={invitations} />
          <InviteForm clients={clients} />
        </>
      )}
    </Fetched>
  );
}
