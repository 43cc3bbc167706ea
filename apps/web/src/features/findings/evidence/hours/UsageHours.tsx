import type { FragmentType } from '@apollo/client';
import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { UsageHoursOfFindingFragment } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../../page/use-masked.js';
import { useVolumeColumn } from '../../../../page/use-volume-column.js';
import { Button } from '../../../../ui/forms/Button.js';
import { Head, Num, Table } from '../../../../ui/tables/Table.js';
import { ClockOfHours, DayOfHours } from './DayOfHours.js';

const usageHoursOfFinding = graphql(`
  fragment UsageHoursOfFinding on Finding {
    id
    fromOn
    usageStrip {
      meterId
      smallestSeenLPerMin
      days {
        date
        clock
        hours
        rainMm
        isProgrammedKnown
        windows {
          controllerId
          program
          fromMinute
          untilMinute
        }
      }
    }
  }
`);

type Strip = NonNullable<UsageHoursOfFindingFragment['usageStrip']>;
type Day = Strip['days'][number];

/** Two weeks can be taken in at one look. */
const DAYS_SHOWN = 14;

const known = (hours: Day['hours']): number[] => hours.filter((litres): litres is number => typeof litres === 'number');
const sumOf = (day: Day): number | null =>
  known(day.hours).length < day.hours.length ? null : known(day.hours).reduce((a, b) => a + b, 0);
const leastOf = (day: Day): number | null => (known(day.hours).length < day.hours.length ? null : Math.min(...known(day.hours)));

/** The hours of the days around a finding, a row a day, with what the settings held drawn behind the water. */
export function UsageHours({ finding: masked }: { readonly finding: FragmentType<UsageHoursOfFindingFragment> }) {
  const { fromOn, usageStrip: strip } = useMasked(usageHoursOfFinding, masked);
  return strip && strip.days.some(({ hours }) => known(hours).length > 0) ? <Hours strip={strip} fromOn={fromOn ?? null} /> : null;
}

function Hours({ strip, fromOn }: { readonly strip: Strip; readonly fromOn: string | null }) {
  const intl = useIntl();
  const formats = useFormats();
  const [isWhole, setWhole] = useState(false);
  const seen = strip.days.slice(0, strip.days.findLastIndex(({ hours }) => known(hours).length > 0) + 1);
  const days = isWhole ? seen : seen.slice(-DAYS_SHOWN);
  const largest = Math.max(1, ...strip.days.flatMap(({ hours }) => known(hours)));
  const sums = useVolumeColumn(Math.max(...strip.days.map((day) => sumOf(day) ?? 0)));
  const leasts = useVolumeColumn(largest);
  const name = intl.formatMessage({ id: 'hours.title' });
  return (
    <section>
      <h2 className="small">{name}</h2>
      <Table
        name={name}
        isTight
        look="days"
        head={
          <tr>
            <Head>
              <FormattedMessage id="hours.day" />
            </Head>
            <th aria-hidden="true">
              <ClockOfHours />
            </th>
            <Head isNumber>
              <FormattedMessage id="hours.least" values={{ unit: leasts.unit }} />
            </Head>
            <Head isNumber>
              <FormattedMessage id="hours.sum" values={{ unit: sums.unit }} />
            </Head>
            <Head isNumber>
              <FormattedMessage id="hours.rain" values={{ unit: formats.unitOf('depth') }} />
            </Head>
          </tr>
        }
      >
        {days.map((day) => (
          <tr key={day.date} className={fromOn !== null && day.date >= fromOn ? undefined : 'soft'}>
            <td className="nw">{formats.day(day.date)}</td>
            <td aria-hidden="true">
              <DayOfHours day={day} largest={largest} />
            </td>
            <Num>{leasts.figure(leastOf(day))}</Num>
            <Num>{sums.figure(sumOf(day))}</Num>
            <Num>{formats.figureOf('depth', day.rainMm)}</Num>
          </tr>
        ))}
      </Table>
      <Key strip={strip} />
      {!isWhole && seen.length > days.length && (
        <Button kind="plain" onClick={() => setWhole(true)}>
          <FormattedMessage id="hours.all" values={{ count: seen.length }} />
        </Button>
      )}
    </section>
  );
}

function Key({ strip }: { readonly strip: Strip }) {
  const formats = useFormats();
  return (
    <p className="hint">
      <FormattedMessage id={strip.days.some(({ isProgrammedKnown }) => isProgrammedKnown) ? 'hours.key' : 'hours.key.unknown'} />
      {typeof strip.smallestSeenLPerMin === 'number' && (
        <>
          {' '}
          <FormattedMessage
            id="hours.smallest"
            values={{ flow: `${formats.figureOf('flow', strip.smallestSeenLPerMin)} ${formats.unitOf('flow')}` }}
          />
        </>
      )}
    </p>
  );
}
