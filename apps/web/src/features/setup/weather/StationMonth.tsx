import { useQuery } from '@apollo/client/react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { Fetched } from '../../../page/Fetched.js';
import { Section } from '../../../ui/frame/Section.js';
import { Head, Table } from '../../../ui/tables/Table.js';
import { lastDayOf } from './months-between.js';
import { DAY_VALUES, type DayHeads, useDayHeads } from './use-day-heads.js';
import { WeatherDayRow } from './WeatherDayRow.js';

const daysDocument = graphql(`
  query SetupStationDays($id: ID!, $from: Date!, $until: Date!) {
    weatherDays(stationId: $id, from: $from, until: $until) {
      day
      estimated
      etoMm
      marks {
        effect
      }
      ...WeatherDayRow @unmask
    }
  }
`);

interface Props {
  readonly stationId: string;
  readonly month: string;
}

/** The days of one month of a station. */
export function StationMonth({ stationId, month }: Props) {
  const intl = useIntl();
  const heads = useDayHeads();
  const query = useQuery(daysDocument, {
    variables: { id: stationId, from: `${month}-01`, until: lastDayOf(month) },
    fetchPolicy: 'cache-and-network',
  });
  return (
    <Fetched query={query}>
      {({ weatherDays }) => {
        const refused = weatherDays.filter(({ marks }) => marks.some(({ effect }) => effect === 'refused')).length;
        const heading = intl.formatMessage(
          { id: 'weather.month.heading' },
          {
            days: weatherDays.length,
            estimated: weatherDays.filter(({ estimated }) => estimated).length,
            missing: weatherDays.filter(({ etoMm }) => etoMm === null).length,
            refused,
          },
        );
        return (
          <Section heading={heading} note={<FormattedMessage id="weather.month.note" />}>
            <Table isTight name={heading} look="days" head={<Heads heads={heads} />}>
              {weatherDays.map((day) => (
                <WeatherDayRow key={day.day} day={day} heads={heads} />
              ))}
            </Table>
          </Section>
        );
      }}
    </Fetched>
  );
}

function Heads({ heads }: { readonly heads: DayHeads }) {
  return (
    <tr>
      <Head>
        <FormattedMessage id="weather.head.day" />
      </Head>
      {DAY_VALUES.map((value) => (
        <Head key={value} isNumber>
          {heads[value]}
        </Head>
      ))}
      <Head>
        <FormattedMessage id="weather.head.says" />
      </Head>
    </tr>
  );
}
