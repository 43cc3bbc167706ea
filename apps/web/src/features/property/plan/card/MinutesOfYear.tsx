import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { NOT_KNOWN } from '../../../../i18n/numbers.js';
import { Section } from '../../../../ui/frame/Section.js';
import { Head, Num, Table } from '../../../../ui/tables/Table.js';
import type { Card, CardMonth } from './card-document.js';

interface Props {
  readonly card: Card;
  readonly zones: readonly { readonly name: string; readonly station?: number | null }[];
}

/** The same year in minutes for each start, for a timer whose percent is not used: one row for each station of each program. */
export function MinutesOfYear({ card: { programs, months }, zones }: Props) {
  const intl = useIntl();
  const formats = useFormats();
  const heading = intl.formatMessage({ id: 'card.minutes' });
  const short = (month: string) => intl.formatDate(`${month}-15`, { month: 'short', timeZone: 'UTC' });
  const rows = programs.flatMap(({ name, stations }) => stations.map(({ station }) => ({ name, station })));
  return (
    <Section heading={heading} note={<FormattedMessage id="card.minutes.note" />}>
      <Table
        name={heading}
        isTight
        head={
          <tr>
            <Head>
              <FormattedMessage id="card.station" />
            </Head>
            {months.map(({ month }) => (
              <Head key={month} isNumber>
                {short(month)}
              </Head>
            ))}
          </tr>
        }
      >
        {rows.map(({ name, station }) => (
          <tr key={`${name} ${station}`}>
            <td>
              <b>{name}</b> <span className="soft">{station}</span> {zones.find((zone) => zone.station === station)?.name}
            </td>
            {months.map((month) => {
              const minutes = minutesIn(month, name, station);
              return (
                <Num key={month.month} head={short(month.month)}>
                  {minutes === null ? NOT_KNOWN : formats.number(minutes)}
                </Num>
              );
            })}
          </tr>
        ))}
      </Table>
    </Section>
  );
}

function minutesIn({ isOff, programs }: CardMonth, name: string, station: number): number | null {
  if (isOff) return 0;
  const program = programs?.find((each) => each.name === name);
  if (!program) return null;
  const minutes = program.stations.reduce((sum, run) => (run.station === station ? sum + run.minutes : sum), 0);
  return Math.round((minutes * (program.adjustPercent ?? 100)) / 100);
}
