import { useQuery } from '@apollo/client/react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Link, useParams } from 'react-router';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { Fetched } from '../../../../page/Fetched.js';
import { paths } from '../../../../page/paths.js';
import { useAddress } from '../../../../page/use-address.js';
import { ButtonLink } from '../../../../ui/forms/Button.js';
import { PageHead } from '../../../../ui/frame/PageHead.js';
import { EmptyState } from '../../../../ui/states/States.js';
import { setupPaths, thingsAddress } from '../../urls.js';
import { VisitTermsSection } from '../../visits/VisitTermsSection.js';
import { ThingsOfProperty } from './ThingsOfProperty.js';

const propertyThingsDocument = graphql(`
  query SetupProperty($id: ID!) {
    property(id: $id) {
      id
      name
      client {
        id
        name
      }
      ...ThingsOfProperty
      ...VisitTermsOfProperty
    }
  }
`);

/** What stands on one property: meters, controllers, zones, plantings, backflow assemblies. */
export function PropertyThingsPage() {
  const intl = useIntl();
  const { id = '' } = useParams();
  const [place, change] = useAddress(thingsAddress);
  const query = useQuery(propertyThingsDocument, { variables: { id }, fetchPolicy: 'cache-and-network' });
  return (
    <Fetched query={query}>
      {({ property }) =>
        property ? (
          <>
            <PageHead
              crumb={
                <>
                  <Link to={setupPaths.properties}>
                    <FormattedMessage id="setup.nav.properties" />
                  </Link>{' '}
                  · {property.client.name}
                </>
              }
              sentence={intl.formatMessage({ id: 'setup.property.title' }, { name: property.name })}
              actions={
                <ButtonLink kind="plain" to={paths.property(property.id)}>
                  <FormattedMessage id="setup.property.see" />
                </ButtonLink>
              }
            />
            <VisitTermsSection property={property} place={place} onPlace={change} />
            <ThingsOfProperty property={property} place={place} onPlace={change} />
          </>
        ) : (
          <EmptyState
            sentence={intl.formatMessage({ id: 'setup.property.gone' })}
            action={
              <ButtonLink to={setupPaths.properties}>
                <FormattedMessage id="setup.nav.properties" />
              </ButtonLink>
            }
          />
        )
      }
    </Fetched>
  );
}
