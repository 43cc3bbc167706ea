import { useQuery } from '@apollo/client/react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { Link } from 'react-router';
import { Fetched } from '../../../../page/Fetched.js';
import { useAddress } from '../../../../page/use-address.js';
import { PageHead } from '../../../../ui/frame/PageHead.js';
import { setupPaths, thingsAddress } from '../../urls.js';
import { ThingsSection } from '../list/ThingsSection.js';
import { station } from '../kinds/station.js';

const stationsDocument = graphql(`
  query SetupStations {
    weatherStations {
      ...WeatherStationFields @unmask
    }
  }
`);

/** Where the weather is from. */
export function StationsPage() {
  const intl = useIntl();
  const { day } = useFormats();
  const [place, change] = useAddress(thingsAddress);
  const query = useQuery(stationsDocument, { fetchPolicy: 'cache-and-network' });
  return (
    <Fetched query={query}>
      {({ weatherStations }) => {
        const of = new Map(weatherStations.map((one) => [one.id, one]));
        return (
          <>
            <PageHead sentence={intl.formatMessage({ id: 'setup.stations.title' })} lede={<FormattedMessage id="setup.stations.lede" />} />
            <ThingsSection
              kind={station}
              things={weatherStations}
              nameOf={({ id }) => of.get(id)?.name ?? ''}
              about={({ id }) =>
                intl.formatMessage({ id: 'setup.station.about' }, { day: of.get(id)?.lastDay ? day(of.get(id)?.lastDay) : 'none' })
              }
              links={({ id }) => (
                <Link
                  to={setupPaths.station(id)}
                  aria-label={intl.formatMessage({ id: 'setup.stations.daysOf' }, { name: of.get(id)?.name ?? '' })}
                >
                  <FormattedMessage id="setup.stations.days" />
                </Link>
              )}
              place={place}
              onPlace={change}
              refetch={['SetupStations']}
            />
          </>
        );
      }}
    </Fetched>
  );
}
