import { useQuery } from '@apollo/client/react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { Fetched } from '../../../../page/Fetched.js';
import { useAddress } from '../../../../page/use-address.js';
import { mayDo, useViewer } from '../../../../session/viewer.js';
import { PageHead } from '../../../../ui/frame/PageHead.js';
import { thingsAddress } from '../../urls.js';
import { ThingsSection } from '../list/ThingsSection.js';
import { crew } from '../kinds/crew.js';

const crewsDocument = graphql(`
  query SetupCrews($withMembers: Boolean!) {
    crews {
      ...CrewFields @unmask
      members {
        id
        person {
          id
          name
        }
      }
    }
    members @include(if: $withMembers) {
      id
      role
      person {
        id
        name
      }
    }
  }
`);

/** Who goes together. */
export function CrewsPage() {
  const intl = useIntl();
  const viewer = useViewer();
  const [place, change] = useAddress(thingsAddress);
  const withMembers = mayDo(viewer, 'manage members');
  const query = useQuery(crewsDocument, { variables: { withMembers }, fetchPolicy: 'cache-and-network' });
  return (
    <Fetched query={query}>
      {({ crews, members }) => {
        const of = new Map(crews.map((one) => [one.id, one]));
        const things = crews.map((one) => ({ ...one, memberIds: one.members.map(({ id }) => id) }));
        // Without the list of members, those that are already with a crew can still be chosen.
        const people = new Map(
          [...crews.flatMap((one) => one.members), ...(members ?? []).filter(({ role }) => role !== 'client')].map((one) => [one.id, one]),
        );
        return (
          <>
            <PageHead sentence={intl.formatMessage({ id: 'setup.crews.title' })} lede={<FormattedMessage id="setup.crews.lede" />} />
            <ThingsSection
              kind={crew}
              things={things}
              choices={{ memberIds: [...people.values()].map(({ id, person }) => ({ value: id, words: person.name })) }}
              nameOf={({ id }) => of.get(id)?.name ?? ''}
              about={({ id }) =>
                of
                  .get(id)
                  ?.members.map(({ person }) => person.name)
                  .join(', ')
              }
              place={place}
              onPlace={change}
              refetch={['SetupCrews']}
            />
          </>
        );
      }}
    </Fetched>
  );
}
