import { useQuery } from '@apollo/client/react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { Fetched } from '../../../../page/Fetched.js';
import { useAddress } from '../../../../page/use-address.js';
import { useViewer } from '../../../../session/viewer.js';
import { PageHead } from '../../../../ui/frame/PageHead.js';
import { setupPaths, thingsAddress } from '../../urls.js';
import { ThingsSection } from '../list/ThingsSection.js';
import { property } from '../kinds/property.js';

const propertiesDocument = graphql(`
  query SetupProperties {
    properties {
      ...PropertyFields @unmask
      client {
        id
        name
      }
      waterSupplier {
        id
      }
      weatherStation {
        id
      }
    }
    clients {
      id
      name
    }
    waterSuppliers {
      id
      name
    }
    weatherStations {
      id
      name
    }
  }
`);

const choicesOf = (things: readonly { readonly id: string; readonly name: string }[]) =>
  things.map(({ id, name }) => ({ value: id, words: name }));

/** The places. */
export function PropertiesPage() {
  const intl = useIntl();
  const { organization } = useViewer();
  const [place, change] = useAddress(thingsAddress);
  const query = useQuery(propertiesDocument, { fetchPolicy: 'cache-and-network' });
  return (
    <Fetched query={query}>
      {({ properties, clients, waterSuppliers, weatherStations }) => {
        const of = new Map(properties.map((one) => [one.id, one]));
        const things = properties.map((one) => ({
          ...one,
          clientId: one.client.id,
          waterSupplierId: one.waterSupplier?.id ?? null,
          weatherStationId: one.weatherStation?.id ?? null,
        }));
        return (
          <>
            <PageHead
              sentence={intl.formatMessage({ id: 'setup.properties.title' })}
              lede={<FormattedMessage id="setup.properties.lede" />}
            />
            <ThingsSection
              isSearched
              kind={property}
              things={things}
              nameOf={({ id }) => of.get(id)?.name ?? ''}
              about={({ id }) => [of.get(id)?.client.name, of.get(id)?.address, of.get(id)?.city].filter(Boolean).join(', ')}
              links={({ id }) => (
                <Link
                  to={setupPaths.property(id)}
                  aria-label={intl.formatMessage({ id: 'setup.properties.thingsOf' }, { name: of.get(id)?.name ?? '' })}
                >
                  <FormattedMessage id="setup.properties.things" />
                </Link>
              )}
              fixed={{ timeZone: organization.timeZone }}
              choices={{
                clientId: choicesOf(clients),
                waterSupplierId: choicesOf(waterSuppliers),
                weatherStationId: choicesOf(weatherStations),
              }}
              // A link that asks for the first property names no kind.
              place={{ ...place, kind: place.kind ?? (place.thing ? property.name : null) }}
              onPlace={change}
              refetch={['SetupProperties', 'Exchange']}
            />
          </>
        );
      }}
    </Fetched>
  );
}
