import { useQuery } from '@apollo/client/react';
import { FormattedMessage } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../graphql/__generated__/gql.js';
import { useFormats } from '../../i18n/LanguageProvider.js';
import { paths } from '../paths.js';

const recentRainDocument = graphql(`
  query RecentRain {
    recentRain {
      stationId
      name
      rainMm
      lastRainOn
    }
  }
`);

/** Where it rained in the last few days: the way to the list of controllers that can be paused. Nothing where it was dry. */
export function RainLink() {
  const { quantity, day } = useFormats();
  const { data } = useQuery(recentRainDocument, { fetchPolicy: 'cache-and-network' });
  const [wettest] = data?.recentRain ?? [];
  if (!wettest) return null;
  return (
    <p className="rain-link">
      <FormattedMessage
        id="rain.link.fell"
        values={{ rain: quantity('depth', wettest.rainMm), station: wettest.name, day: day(wettest.lastRainOn) }}
      />{' '}
      <Link to={paths.rainPauses}>
        <FormattedMessage id="rain.link" />
      </Link>
    </p>
  );
}
