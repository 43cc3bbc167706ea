import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { Fetched } from '../../../page/Fetched.js';
import { useAddress } from '../../../page/use-address.js';
import { mayDo, useViewer } from '../../../session/viewer.js';
import { usePageTitle } from '../../../ui/frame/PageHead.js';
import { PhoneFrame } from '../../../ui/phone/PhoneFrame.js';
import '../fieldwork.css';
import { dayAddress } from '../urls.js';
import { SentLine } from '../device/SentLine.js';
import { useShelved } from '../device/use-shelved.js';
import { CrewDay } from './CrewDay.js';
import { DayEnd } from './DayEnd.js';
import { CrewSwitch } from './CrewSwitch.js';
import { DaySwitch } from './DaySwitch.js';
import { Readiness } from './Readiness.js';

export const todayDocument = graphql(`
  query Today($day: Date!, $crewId: ID) {
    today(day: $day, crewId: $crewId) {
      id
      day
      stops {
        id
        visit {
          id
          closedAt
        }
      }
      ...CrewDayRoute
      ...DayEndRoute
    }
    crews {
      id
      name
    }
  }
`);

/** The day's stops in order: where, and what to do there. */
export function TodayPage() {
  const intl = useIntl();
  const viewer = useViewer();
  const { dayInWords } = useFormats();
  const [place, change] = useAddress(dayAddress);
  const day = place.day ?? viewer.organization.today;
  usePageTitle(intl.formatMessage({ id: 'frame.today' }));
  const query = useShelved(todayDocument, { day, crewId: place.crew });
  const stopIds = query.data?.today.flatMap(({ stops }) => stops.map(({ id }) => id)) ?? [];
  const back = mayDo(viewer, 'read portfolio') ? { back: { to: '/', words: intl.formatMessage({ id: 'frame.portfolio' }) } } : {};
  return (
    <PhoneFrame {...back} place={viewer.person.name} status={<SentLine isBetween />}>
      <Fetched query={query}>
        {({ today, crews }) => {
          const stops = today.flatMap((route) => route.stops);
          const left = stops.filter(({ visit }) => !visit?.closedAt).length;
          return (
            <>
              <p className="where">{dayInWords(day)}</p>
              <h1>
                <FormattedMessage
                  id="field.today.title"
                  values={{ stops: stops.length, left, closed: stops.length - left, isToday: String(day === viewer.organization.today) }}
                />
              </h1>
              <DaySwitch
                day={day}
                today={viewer.organization.today}
                onChange={(next) => change({ day: next === viewer.organization.today ? null : next })}
              />
              <Readiness stopIds={stopIds} />
              {crews.length > 1 && <CrewSwitch crews={crews} chosen={place.crew} onChange={(crew) => change({ crew })} />}
              {stops.length === 0 && (
                <p className="where">
                  <FormattedMessage id={mayDo(viewer, 'assign work') ? 'field.today.emptyOffice' : 'field.today.emptyCrew'} />
                </p>
              )}
              {today.map((route) => (
                <DayEnd key={route.id} route={route} />
              ))}
              {today.map((route) => (
                <CrewDay key={route.id} route={route} isNamed={today.length > 1 || crews.length > 1} />
              ))}
            </>
          );
        }}
      </Fetched>
    </PhoneFrame>
  );
}
