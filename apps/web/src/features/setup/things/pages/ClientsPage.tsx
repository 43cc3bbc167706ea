import { useQuery } from '@apollo/client/react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { Fetched } from '../../../../page/Fetched.js';
import { useAddress } from '../../../../page/use-address.js';
import { PageHead } from '../../../../ui/frame/PageHead.js';
import { thingsAddress } from '../../urls.js';
import { ThingsSection } from '../list/ThingsSection.js';
import { client } from '../kinds/client.js';

const clientsDocument = graphql(`
  query SetupClients {
    clients {
      ...ClientFields @unmask
      properties {
        id
        name
      }
    }
  }
`);

/** Who pays. */
export function ClientsPage() {
  const intl = useIntl();
  const { money } = useFormats();
  const [place, change] = useAddress(thingsAddress);
  const query = useQuery(clientsDocument, { fetchPolicy: 'cache-and-network' });
  return (
    <Fetched query={query}>
      {({ clients }) => {
        const of = new Map(clients.map((one) => [one.id, one]));
        return (
          <>
            <PageHead sentence={intl.formatMessage({ id: 'setup.clients.title' })} lede={<FormattedMessage id="setup.clients.lede" />} />
            <ThingsSection
              isSearched
              kind={client}
              things={clients}
              nameOf={({ id }) => of.get(id)?.name ?? ''}
              about={({ id }) => {
                const one = of.get(id);
                const limit = one?.notToExceed;
                return [
                  one?.properties.map(({ name }) => name).join(', '),
                  typeof limit === 'number' && intl.formatMessage({ id: 'setup.clients.limit' }, { limit: money(limit) }),
                ]
                  .filter(Boolean)
                  .join('; ');
              }}
              place={place}
              onPlace={change}
              refetch={['SetupClients']}
            />
          </>
        );
      }}
    </Fetched>
  );
}
