import { useQuery } from '@apollo/client/react';
import { useIntl } from 'react-intl';
import { useParams } from 'react-router';
import { graphql } from '../../graphql/__generated__/gql.js';
import { Fetched } from '../../page/Fetched.js';
import { useAddress } from '../../page/use-address.js';
import { EmptyState } from '../../ui/states/States.js';
import { OneProperty } from './OneProperty.js';
import './property.css';
import { propertyAddress } from './urls.js';

export const propertyPageDocument = graphql(`
  query PropertyPage($id: ID!, $month: Month) {
    property(id: $id) {
      id
      name
      zones {
        id
        name
        station
      }
      controllers {
        id
        name
        ...ControllerOfProperty
      }
      meters {
        id
        name
        ...MeterOfProperty
      }
      account(month: $month) {
        id
        month
        through
        ...GaugedAccount
        ...VerdictOfAccount
        ...AccountOfProperty
        ...ZonesOfAccount
        ...DoubtOfAccount
      }
      accounts {
        id
        month
        ...GaugedAccount
        ...MonthOfYear
        aboveNeed {
          litres
          within
        }
      }
      ...PropertyOfHead
      ...PropertyOfZones
      ...FindingsOfProperty
      ...CautionsOfProperty
      ...OrdinanceYearOfProperty
      ...WorkOfProperty
      ...VisitsOfProperty
      ...ChangesOfProperty
    }
  }
`);

/** A property: the gauge, why it is off, its zones, controllers and meters, what was found and done, and what is worth measuring. */
export function PropertyPage() {
  const intl = useIntl();
  const { id = '' } = useParams();
  const [{ month }, change] = useAddress(propertyAddress);
  const query = useQuery(propertyPageDocument, { variables: { id, month }, fetchPolicy: 'cache-and-network' });
  // Another month of the same property keeps the page in sight while it is fetched; another property does not.
  const before = query.previousData?.property?.id === id ? query.previousData : undefined;
  return (
    <Fetched query={{ ...query, data: query.data ?? before }}>
      {({ property }) =>
        property ? (
          <OneProperty property={property} month={month} onMonth={(chosen) => change({ month: chosen })} />
        ) : (
          <EmptyState sentence={intl.formatMessage({ id: 'property.gone' })}>{intl.formatMessage({ id: 'property.gone.how' })}</EmptyState>
        )
      }
    </Fetched>
  );
}
