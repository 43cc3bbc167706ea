import { useQuery } from '@apollo/client/react';
import { NEIGHBOUR_WITHIN_KM, NEIGHBOUR_WITHIN_M_OF_HEIGHT, RAIN_WITHIN_KM } from '@rillbook/agronomy/weather/filling/neighbour-station.js';
import { feetFromMetres, metres } from '@rillbook/units/length.js';
import { FormattedMessage, useIntl } from 'react-intl';
import { Link, useParams } from 'react-router';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { Fetched } from '../../../page/Fetched.js';
import { MonthSelect } from '../../../page/MonthSelect.js';
import { useAddress } from '../../../page/use-address.js';
import { ButtonLink } from '../../../ui/forms/Button.js';
import { PageHead } from '../../../ui/frame/PageHead.js';
import { EmptyState } from '../../../ui/states/States.js';
import { setupPaths, stationAddress } from '../urls.js';
import { monthsBetween } from './months-between.js';
import { NormalsSection } from './NormalsSection.js';
import { StationMonth } from './StationMonth.js';

const M_PER_KM = 1000;
const FEET_PER_MILE = 5280;

const stationDocument = graphql(`
  query SetupStation($id: ID!) {
    weatherStation(id: $id) {
      id
      name
      firstDay
      lastDay
      neighbour {
        name
        distanceKm
      }
      ...NormalsSection
    }
  }
`);

/** One weather station, day by day: what was measured, what the checks say of it, what is reckoned with. */
export function StationPage() {
  const intl = useIntl();
  const { id = '' } = useParams();
  const [place, change] = useAddress(stationAddress);
  const query = useQuery(stationDocument, { variables: { id }, fetchPolicy: 'cache-and-network' });
  return (
    <Fetched query={query}>
      {({ weatherStation: station }) => {
        if (!station?.firstDay || !station.lastDay) return <NoDays name={station?.name ?? null} />;
        const months = monthsBetween(station.firstDay, station.lastDay);
        const shown = months.find((month) => month === place.month) ?? months.at(-1)!;
        return (
          <>
            <PageHead
              crumb={
                <Link to={setupPaths.stations}>
                  <FormattedMessage id="setup.nav.stations" />
                </Link>
              }
              sentence={intl.formatMessage({ id: 'setup.station.title' }, { name: station.name })}
              lede={<StandsIn neighbour={station.neighbour ?? null} />}
              actions={<MonthSelect months={months} shown={shown} through={station.lastDay} onChange={(month) => change({ month })} />}
            />
            <StationMonth stationId={station.id} month={shown} />
            <NormalsSection station={station} />
          </>
        );
      }}
    </Fetched>
  );
}

interface StandsInProps {
  readonly neighbour: { readonly name: string; readonly distanceKm: number } | null;
}

/** Which station stands in where a day is missing, or how near one would have to be. */
function StandsIn({ neighbour }: StandsInProps) {
  const intl = useIntl();
  const { number, quantity, units } = useFormats();
  const isUs = units === 'us';
  const far = (km: number): string =>
    `${number(isUs ? feetFromMetres(metres(km * M_PER_KM)) / FEET_PER_MILE : km)} ${intl.formatMessage({ id: isUs ? 'unit.mi' : 'unit.km' })}`;
  return (
    <FormattedMessage
      id="setup.station.lede"
      values={{
        neighbour: neighbour?.name ?? 'none',
        away: far(neighbour?.distanceKm ?? 0),
        reach: far(NEIGHBOUR_WITHIN_KM),
        rain: far(RAIN_WITHIN_KM),
        height: quantity('length', NEIGHBOUR_WITHIN_M_OF_HEIGHT),
      }}
    />
  );
}

function NoDays({ name }: { readonly name: string | null }) {
  const intl = useIntl();
  return (
    <EmptyState
      sentence={intl.formatMessage({ id: name === null ? 'setup.station.gone' : 'setup.station.noDays' }, { name: name ?? '' })}
      action={
        <ButtonLink to={setupPaths.stations}>
          <FormattedMessage id="setup.nav.stations" />
        </ButtonLink>
      }
    />
  );
}
