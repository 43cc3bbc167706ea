import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import type { TodayQuery } from '../../../graphql/__generated__/graphql.js';
import { Fetched } from '../../../page/Fetched.js';
import { useAddress } from '../../../page/use-address.js';
import { mayDo, useViewer } from '../../../session/viewer.js';
import { usePageTitle } from '../../../ui/frame/PageHead.js';
import { PhoneFrame } from '../../../ui/phone/PhoneFrame.js';
import '../fieldwork.css';
import { dayAddress } from '../urls.js';
import { SentLine } from '../device/SentLine.js';
import { shelfName, useShelved } from '../device/use-shelved.js';
import { CrewDay } from './CrewDay.js';
import { DayEnd } from './DayEnd.js';
import { CrewSwitch } from './CrewSwitch.js';
import { DaysHere } from './DaysHere.js';
import { DaySwitch } from './DaySwitch.js';
import { Readiness } from './Readiness.js';
import { todayDocument } from './today-document.js';
import { useToday } from './use-today.js';

/** Days on the shelf, whatever was asked of them. */
const DAYS = shelfName(todayDocument as never, {}).slice(0, -'{}'.length);

/** The day's stops in order: where, and what to do there. */
export function TodayPage() {
  const intl = useIntl();
  const viewer = useViewer();
  const { dayInWords } = useFormats();
  const [place, change] = useAddress(dayAddress);
  const now = useToday();
  const day = place.day ?? now;
  usePageTitle(intl.formatMessage({ id: 'frame.today' }));
  const query = useShelved(todayDocument, { day, crewId: place.crew });
  const back = mayDo(viewer, 'read portfolio') ? { back: { to: '/', words: intl.formatMessage({ id: 'frame.portfolio' }) } } : {};
  return (
    <PhoneFrame {...back} place={viewer.person.name} status={<SentLine isBetween />}>
      <p className="where">{dayInWords(day)}</p>
      {query.data !== undefined && <Stops told={query.data} isToday={day === now} />}
      <DaySwitch day={day} today={now} onChange={(next) => change({ day: next === now ? null : next })} />
      {query.data === undefined && query.error !== undefined && <DaysHere prefix={DAYS} day={day} />}
      <Fetched query={query}>
        {(told) => (
          <>
            <Readiness stopIds={idsIn(told)} before={day === now && viewer.crewIds.length > 0 ? now : null} crewId={place.crew} />
            <Crews told={told} chosen={place.crew} onChoose={(crew) => change({ crew })} />
          </>
        )}
      </Fetched>
    </PhoneFrame>
  );
}

const idsIn = ({ today }: TodayQuery): readonly string[] => today.flatMap(({ stops }) => stops.map(({ id }) => id));

interface StopsProps {
  readonly told: TodayQuery;
  readonly isToday: boolean;
}

function Stops({ told: { today }, isToday }: StopsProps) {
  const stops = today.flatMap((route) => route.stops);
  const left = stops.filter(({ visit }) => !visit?.closedAt).length;
  return (
    <h1>
      <FormattedMessage
        id="field.today.title"
        values={{ stops: stops.length, left, closed: stops.length - left, isToday: String(isToday) }}
      />
    </h1>
  );
}

interface CrewsProps {
  readonly told: TodayQuery;
  readonly chosen: string | null;
  readonly onChoose: (crew: string | null) => void;
}

/** Each crew's stops, and what the day has come to. */
function Crews({ told: { today, crews }, chosen, onChoose }: CrewsProps) {
  const viewer = useViewer();
  return (
    <>
      {crews.length > 1 && <CrewSwitch crews={crews} chosen={chosen} onChange={onChoose} />}
      {today.every(({ stops }) => stops.length === 0) && (
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
}
