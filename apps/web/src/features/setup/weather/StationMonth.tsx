import { useQuery } from '@apollo/client/react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { Fetched } from '../../../page/Fetched.js';
import { Section } from '../../../ui/frame/Section.js';
import { Head, Table } from '../../../ui/tables/Table.js';
import { lastDayOf } from './months-between.js';
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
  const formats = useFormats();
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
            <Table
              isTight
              name={heading}
              head={<Heads temperature={formats.unitOf('temperature')} speed={formats.unitOf('speed')} depth={formats.unitOf('depth')} />}
            >
              {weatherDays.map((day) => (
                <WeatherDayRow key={day.day} day={day} />
              ))}
            </Table>
          </Section>
        );
      }}
    </Fetched>
  );
}

function Heads(units: { readonly temperature: string; readonly speed: string; readonly depth: string }) {
  return (
    <tr>
      <Head>
        <FormattedMessage id="weather.head.day" />
      </Head>
      <Head isNumber>
        <FormattedMessage id="weather.head.high" values={units} />
      </Head>
      <Head isNumber>
        <FormattedMessage id="weather.head.low" values={units} />
      </Head>
      <Head isNumber>
        <FormattedMessage id="weather.head.humidity" />
      </Head>
      <Head isNumber>
        <FormattedMessage id="weather.head.dewPoint" values={units} />
      </Head>
      <Head isNumber>
        <FormattedMessage id="weather.head.wind" values={units} />
      </Head>
      <Head isNumber>
        <FormattedMessage id="weather.head.solar" />
      </Head>
      <Head isNumber>
        <FormattedMessage id="weather.head.rain" values={units} />
      </Head>
      <Head isNumber>
        <FormattedMessage id="weather.head.eto" values={units} />
      </Head>
      <Head>
        <FormattedMessage id="weather.head.says" />
      </Head>
    </tr>
  );
}
