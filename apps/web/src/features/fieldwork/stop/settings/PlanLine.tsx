import { type IntlShape, useIntl } from 'react-intl';
import type { Formats } from '../../../../i18n/formats.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { NOT_KNOWN } from '../../../../i18n/numbers.js';
import type { NamedStation } from './ControllerSettings.js';
import { DaysInWords } from './DaysInWords.js';
import { type PlanRow, stationIn } from './plan-rows.js';
import { type GivenProgram, minutesOfClock } from './settings-fact.js';

interface Props {
  readonly row: PlanRow;
  readonly stations: readonly NamedStation[];
  readonly hasPlan: boolean;
}

/** One line of the plan; what differs is bold, larger, and has a bar at its left. */
export function PlanLine({ row, stations, hasPlan }: Props) {
  const intl = useIntl();
  const formats = useFormats();
  const className = [row.differs ? 'differs' : '', row.what === 'days' ? 'week' : ''].filter(Boolean).join(' ');
  const cell = (program: GivenProgram | null) =>
    row.what === 'days' ? program ? <DaysInWords days={program.days} /> : NOT_KNOWN : valueOf(intl, formats, row, program);
  return (
    <tr className={className || undefined}>
      <td>{nameOf(intl, row, stations)}</td>
      {hasPlan && <td>{cell(row.planned)}</td>}
      <td className={hasPlan ? 'was' : undefined}>{cell(row.present)}</td>
    </tr>
  );
}

function nameOf(intl: IntlShape, { what, station }: PlanRow, stations: readonly NamedStation[]): string {
  if (what !== 'station') return intl.formatMessage({ id: `field.settings.${what}` });
  const name = stations.find((one) => one.station === station)?.name;
  return name ? `${station} ${name}` : String(station);
}

function valueOf(intl: IntlShape, formats: Formats, { what, station }: PlanRow, program: GivenProgram | null): string {
  if (!program) return NOT_KNOWN;
  if (what === 'percent') return formats.number(program.adjustPercent ?? 100);
  if (what === 'starts') return program.starts.map((clock) => clockInWords(formats, clock)).join(', ') || NOT_KNOWN;
  const line = stationIn(program, station ?? 0);
  if (!line) return NOT_KNOWN;
  const minutes = `${formats.number(line.minutes, 1)} ${intl.formatMessage({ id: 'unit.min' })}`;
  return (line.cycles ?? 1) > 1
    ? intl.formatMessage({ id: 'field.settings.cycles' }, { minutes, cycles: line.cycles ?? 1, soak: line.soakMinutes ?? 0 })
    : minutes;
}

const DAY_OF_NO_CLOCK_CHANGE = Date.UTC(2026, 0, 1);

/** A start as a clock shows it: 3:00 am. */
export const clockInWords = (formats: Formats, clock: string): string =>
  formats.time(new Date(DAY_OF_NO_CLOCK_CHANGE + minutesOfClock(clock) * 60_000).toISOString(), 'UTC');
