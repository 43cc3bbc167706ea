import { useIntl } from 'react-intl';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { scrolls } from '../../../ui/tables/scrolls.js';
import { useViewer } from '../../../session/viewer.js';

const WIDTH = 1200;
const GROUND = 34;

interface Props {
  readonly month: string;
  /** The last day that the accounts cover: so far the water stands. */
  readonly through: string | null;
}

/** The month as a rule of days, with today and how far the accounts reach. */
export function MonthStrip({ month, through }: Props) {
  const intl = useIntl();
  const formats = useFormats();
  const { today } = useViewer().organization;
  const days = daysIn(month);
  const pitch = WIDTH / days;
  const reached = through?.startsWith(month) ? Number(through.slice(8)) : 0;
  const now = today.startsWith(month) ? Number(today.slice(8)) : null;
  const words = intl.formatMessage({ id: 'overview.month.today' }, { day: formats.day(today) });
  const strip = intl.formatMessage({ id: 'overview.month.strip' }, { month: formats.month(month), day: formats.dayInWords(today) });
  const left = (now ?? 0) > days / 2;
  return (
    <div
      className="scroll"
      ref={(place) => {
        if (!place) return;
        // Where not all days fit, today is in sight.
        place.scrollLeft = pitch * (now ?? reached) - place.clientWidth / 2;
        scrolls(place, strip);
      }}
    >
      <svg className="strip gauge" viewBox={`0 0 ${WIDTH} 60`} width={WIDTH} height="60" role="img" aria-label={strip}>
        <path d={`M0 20H${pitch * reached}V${GROUND}H0z`} fill="var(--water-tint)" />
        <path d={`M0 ${GROUND}H${WIDTH}`} stroke="var(--ink)" strokeWidth="1.5" />
        <Days days={days} pitch={pitch} now={now} />
        {now !== null && (
          <>
            <path d={`M${pitch * (now - 0.5)} 2V${GROUND}`} stroke="var(--water)" strokeWidth="2" />
            <text
              x={pitch * (now - 0.5) + (left ? -8 : 8)}
              y="14"
              textAnchor={left ? 'end' : 'start'}
              fontSize="14"
              fontWeight="700"
              fill="var(--ink)"
            >
              {words}
            </text>
          </>
        )}
      </svg>
    </div>
  );
}

interface DaysProps {
  readonly days: number;
  readonly pitch: number;
  readonly now: number | null;
}

const Days = ({ days, pitch, now }: DaysProps) =>
  Array.from({ length: days }, (_, at) => at + 1).map((day) => (
    <g key={day}>
      <path d={`M${pitch * (day - 1) + 0.5} ${GROUND}v6`} stroke="var(--ink-2)" />
      <text
        x={pitch * (day - 0.5)}
        y="55"
        textAnchor="middle"
        fontSize="15"
        fontWeight={day === now ? 700 : 400}
        fill={day === now ? 'var(--ink)' : 'var(--ink-2)'}
      >
        {day}
      </text>
    </g>
  ));

/** The days of a month 'YYYY-MM': day 0 of the next one is its last. */
const daysIn = (month: string): number => new Date(Date.UTC(Number(month.slice(0, 4)), Number(month.slice(5, 7)), 0)).getUTCDate();
