import { FormattedMessage, type IntlShape, useIntl } from 'react-intl';
import type { Formats } from '../../../i18n/formats.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { NOT_KNOWN } from '../../../i18n/numbers.js';
import type { NamedStation } from '../../../programs/named-station.js';
import { DaysInWords } from './DaysInWords.js';
import { type PlanRow, stationIn } from './plan-rows.js';
import { type GivenProgram, type GivenStation, minutesOfClock } from '../../../programs/settings-fact.js';

interface Props {
  readonly row: PlanRow;
  readonly stations: readonly NamedStation[];
  readonly hasPlan: boolean;
}

/** One line of the plan; what differs is bold, larger, and has a bar at its left. */
export function PlanLine({ row, stations, hasPlan }: Props) {
  const intl = useIntl();
  const className = [row.differs ? 'differs' : '', row.what === 'days' ? 'week' : ''].filter(Boolean).join(' ');
  return (
    <tr className={className || undefined}>
      <td>{settingName(intl, row, stations)}</td>
      {hasPlan && (
        <td>
          <Setting row={row} program={row.planned} />
        </td>
      )}
      <td className={hasPlan ? 'was' : undefined}>
        <Setting row={row} program={row.present} />
      </td>
    </tr>
  );
}

/** What a line of a program is called: days, the station with its zone, starts, percent. */
export function settingName(intl: IntlShape, { what, station }: PlanRow, stations: readonly NamedStation[]): string {
  if (what !== 'station') return intl.formatMessage({ id: `field.settings.${what}` });
  const name = stations.find((one) => one.station === station)?.name;
  return name ? `${station} ${name}` : String(station);
}

/** One setting of a program, as a crew reads it. */
export function Setting({ row: { what, station }, program }: { readonly row: PlanRow; readonly program: GivenProgram | null }) {
  const formats = useFormats();
  if (!program) return NOT_KNOWN;
  switch (what) {
    case 'days':
      return <DaysInWords days={program.days} />;
    case 'percent':
      return formats.number(program.adjustPercent ?? 100);
    case 'starts':
      return program.starts.map((clock) => clockInWords(formats, clock)).join(', ') || NOT_KNOWN;
    case 'station':
      return <Minutes line={stationIn(program, station ?? 0)} />;
  }
}

function Minutes({ line }: { readonly line: GivenStation | null }) {
  const { number } = useFormats();
  if (!line) return NOT_KNOWN;
  const cycles = line.cycles ?? 1;
  return (
    <>
      {number(line.minutes, 1)} <FormattedMessage id="unit.min" />
      {cycles > 1 && (
        <>
          <br />
          <small>
            <FormattedMessage id="field.settings.cycles" values={{ cycles }} />
          </small>
        </>
      )}
    </>
  );
}

const DAY_OF_NO_CLOCK_CHANGE = Date.UTC(2026, 0, 1);

/** A start as a clock shows it: 3:00 am. */
const clockInWords = (formats: Formats, clock: string): string =>
  formats.time(new Date(DAY_OF_NO_CLOCK_CHANGE + minutesOfClock(clock) * 60_000).toISOString(), 'UTC');
