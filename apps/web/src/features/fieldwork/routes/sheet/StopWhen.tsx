import type { FragmentType } from '@apollo/client';
import { useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { RouteSheetQuery } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../../page/use-masked.js';
import { clockInWords } from '../../../../page/values/minute-of-day.js';
import { sentenceCase } from '../../../../page/values/sentence-case.js';

const hoursOnSheet = graphql(`
  fragment HoursOnSheet on Property {
    id
    visitTerms {
      version
      hours {
        kind
        weekdays
        fromMinute
        untilMinute
      }
    }
  }
`);

export type TimeOnSheet = RouteSheetQuery['plannedTimes'][number];

/** The time that a day gives a stop; null where it gives none. */
export const timeOf = (times: readonly TimeOnSheet[], stopId: string): TimeOnSheet | null =>
  times.find(({ stop }) => stop.id === stopId) ?? null;

interface Props {
  /** YYYY-MM-DD */
  readonly day: string;
  readonly time: TimeOnSheet | null;
  readonly property: FragmentType<typeof hoursOnSheet>;
}

/** Monday 1 to Sunday 7. */
const weekdayOf = (day: string): number => new Date(`${day}T12:00:00Z`).getUTCDay() || 7;

/** When the crew is to be at a stop, and when that day its gate is open or nobody may work there; nothing where neither is known. */
export function StopWhen({ day, time, property }: Props) {
  return time ? <TimedStop day={day} time={time} property={property} /> : <WhenWords day={day} planned={[]} property={property} />;
}

function TimedStop({ day, time, property }: Props & { readonly time: TimeOnSheet }) {
  const intl = useIntl();
  const { time: inWords, minutes } = useFormats();
  const { beginMinute, endMinute, lateMinutes, visited } = time;
  const span = { begin: clockInWords(inWords, beginMinute), end: clockInWords(inWords, endMinute) };
  const when = intl.formatMessage({ id: visited ? 'sheet.when.was' : 'sheet.when.planned' }, span);
  const late =
    typeof lateMinutes === 'number'
      ? intl.formatMessage({ id: 'sheet.when.late' }, { minutes: minutes(lateMinutes) })
      : intl.formatMessage({ id: 'sheet.when.shut' });
  return <WhenWords day={day} planned={lateMinutes === 0 ? [when] : [when, late]} property={property} />;
}

function WhenWords({ day, planned, property }: Pick<Props, 'day' | 'property'> & { readonly planned: readonly string[] }) {
  const intl = useIntl();
  const { time: inWords } = useFormats();
  const { visitTerms } = useMasked(hoursOnSheet, property);
  const hours = (visitTerms?.hours ?? [])
    .filter(({ weekdays }) => weekdays.includes(weekdayOf(day)))
    .map(({ kind, fromMinute, untilMinute }) =>
      intl.formatMessage(
        { id: kind === 'closed' ? 'sheet.when.closed' : 'sheet.when.open' },
        { from: clockInWords(inWords, fromMinute), until: clockInWords(inWords, untilMinute) },
      ),
    );
  return sentenceCase([...planned, ...hours].join('; '));
}
