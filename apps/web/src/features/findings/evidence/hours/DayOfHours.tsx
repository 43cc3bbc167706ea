import type { UsageHoursOfFindingFragment } from '../../../../graphql/__generated__/graphql.js';

type Day = NonNullable<UsageHoursOfFindingFragment['usageStrip']>['days'][number];

const WIDTH = 384;
const HEIGHT = 22;
const MINUTES_OF_HOUR = 60;
/** Water that did run is seen, however little. */
const LEAST_BAR = 3;
const GAP = 1.5;

/** One day's hours as bars on one scale, what was programmed as a tinted stretch behind, a dotted foot where an hour is not known. The figures stand beside it. */
export function DayOfHours({ day, largest }: { readonly day: Day; readonly largest: number }) {
  const step = WIDTH / day.hours.length;
  const perMinute = step / MINUTES_OF_HOUR;
  return (
    <svg className="hours" height={HEIGHT} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} preserveAspectRatio="none">
      {day.windows.map(({ controllerId, program, fromMinute, untilMinute }) => (
        <g key={`${controllerId} ${program} ${fromMinute}`} data-window={program}>
          <rect
            x={fromMinute * perMinute}
            y="0"
            width={Math.max(2, (untilMinute - fromMinute) * perMinute)}
            height={HEIGHT}
            fill="var(--water-tint)"
          />
          <path d={`M${fromMinute * perMinute} 0.5h${Math.max(2, (untilMinute - fromMinute) * perMinute)}`} stroke="var(--water)" />
        </g>
      ))}
      <path d={`M0 ${HEIGHT - 0.5}H${WIDTH}`} stroke="var(--rule-2)" />
      {day.hours.map((litres, at) => (
        <Hour key={at} litres={litres} x={at * step} width={step} largest={largest} />
      ))}
    </svg>
  );
}

interface HourProps {
  readonly litres: number | null;
  readonly x: number;
  readonly width: number;
  readonly largest: number;
}

function Hour({ litres, x, width, largest }: HourProps) {
  if (litres === null)
    return <path d={`M${x + GAP} ${HEIGHT - 3}h${width - 2 * GAP}`} stroke="var(--slate)" strokeDasharray="2 2" data-hour="unknown" />;
  if (litres <= 0) return null;
  const height = Math.max(LEAST_BAR, (litres / largest) * (HEIGHT - 2));
  return <rect x={x + GAP} y={HEIGHT - height} width={width - 2 * GAP} height={height} fill="var(--water)" data-hour="water" />;
}

const CLOCK = [0, 6, 12, 18] as const;

/** The clock over the bars. */
export function ClockOfHours() {
  return (
    <span className="hours-clock">
      {CLOCK.map((hour) => (
        <span key={hour}>{hour}</span>
      ))}
    </span>
  );
}
