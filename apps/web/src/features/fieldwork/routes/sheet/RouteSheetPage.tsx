import { useQuery } from '@apollo/client/react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { Fetched } from '../../../../page/Fetched.js';
import { useAddress } from '../../../../page/use-address.js';
import { useViewer } from '../../../../session/viewer.js';
import { Button } from '../../../../ui/forms/Button.js';
import { PageHead } from '../../../../ui/frame/PageHead.js';
import { EmptyState } from '../../../../ui/states/States.js';
import { SheetList } from './SheetList.js';
import { SheetMap } from '../day-map/SheetMap.js';
import { SheetStop } from './SheetStop.js';
import './sheet.css';
import { sheetAddress } from './urls.js';
import { timeOf } from './StopWhen.js';

export const routeSheetDocument = graphql(`
  query RouteSheet($day: Date!, $crew: ID) {
    today(day: $day, crewId: $crew) {
      id
      note
      crew {
        id
        name
        startLatitude
        startLongitude
        members {
          id
          person {
            id
            name
          }
        }
      }
      stops {
        id
        property {
          id
          name
          latitude
          longitude
        }
        ...ListedStop
        ...SheetStop
      }
    }
    plannedTimes(day: $day, crewId: $crew) {
      stop {
        id
      }
      beginMinute
      endMinute
      lateMinutes
      visited
    }
  }
`);

type Known = number | null | undefined;

const startOf = ({
  startLatitude: latitude,
  startLongitude: longitude,
}: {
  readonly startLatitude?: Known;
  readonly startLongitude?: Known;
}) => (typeof latitude === 'number' && typeof longitude === 'number' ? { latitude, longitude } : null);

const placeOf = ({ name, latitude, longitude }: { readonly name: string; readonly latitude?: Known; readonly longitude?: Known }) => ({
  name,
  latitude: latitude ?? null,
  longitude: longitude ?? null,
});

/** A crew's day on paper: the list of stops, and a card for each to write on. */
export function RouteSheetPage() {
  const intl = useIntl();
  const { dayInWords } = useFormats();
  const { today } = useViewer().organization;
  const [place] = useAddress(sheetAddress);
  const day = place.day ?? today;
  const query = useQuery(routeSheetDocument, { variables: { day, crew: place.crew }, fetchPolicy: 'cache-and-network' });
  return (
    <Fetched query={query}>
      {({ today: routes, plannedTimes }) => (
        <div className="sheet">
          <PageHead
            crumb={dayInWords(day)}
            sentence={intl.formatMessage({ id: 'sheet.title' }, { stops: routes.flatMap(({ stops }) => stops).length })}
            tab={intl.formatMessage({ id: 'sheet.tab' }, { day })}
            actions={
              <Button kind="main" onClick={() => window.print()}>
                <FormattedMessage id="sheet.print" />
              </Button>
            }
          />
          {routes.length === 0 && <EmptyState sentence={intl.formatMessage({ id: 'sheet.none' })}>{null}</EmptyState>}
          {routes.map(({ id, crew, note, stops }) => (
            <section key={id} aria-label={crew.name}>
              <h2>{crew.name}</h2>
              <p className="soft">{crew.members.map(({ person }) => person.name).join(', ')}</p>
              {note && <p>{note}</p>}
              <p className="sheet-care">
                <FormattedMessage id="sheet.care" />
              </p>
              <SheetMap start={startOf(crew)} stops={stops.map(({ property }) => placeOf(property))} />
              <SheetList day={day} stops={stops} times={plannedTimes} />
              <ol className="sheet-stops">
                {stops.map((stop, at) => (
                  <SheetStop key={stop.id} stop={stop} number={at + 1} day={day} time={timeOf(plannedTimes, stop.id)} />
                ))}
              </ol>
            </section>
          ))}
        </div>
      )}
    </Fetched>
  );
}
