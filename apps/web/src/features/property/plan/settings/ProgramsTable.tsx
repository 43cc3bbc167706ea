import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { Head, Num, Table } from '../../../../ui/tables/Table.js';
import { clockInWords, daysInWords } from '../../../../programs/days-in-words.js';
import { type ComparedProgram, minutesOf } from '../../../../page/work/settings-changes.js';

interface Props {
  /** What the table holds, for those who cannot see it. */
  readonly label: string;
  readonly programs: readonly ComparedProgram[];
}

/** Programs as they are typed into a controller. */
export function ProgramsTable({ label, programs }: Props) {
  return (
    <Table
      name={label}
      isTight
      head={
        <tr>
          <Head>
            <FormattedMessage id="property.program" />
          </Head>
          <Head>
            <FormattedMessage id="property.program.days" />
          </Head>
          <Head>
            <FormattedMessage id="property.program.starts" />
          </Head>
          <Head>
            <FormattedMessage id="property.program.stations" />
          </Head>
          <Head isNumber>
            <FormattedMessage id="property.program.percent" />
          </Head>
          <Head isNumber>
            <FormattedMessage id="property.program.total" />
          </Head>
        </tr>
      }
    >
      {programs.map((program) => (
        <ProgramRow key={program.name} program={program} />
      ))}
    </Table>
  );
}

function ProgramRow({ program }: { readonly program: ComparedProgram }) {
  const intl = useIntl();
  const formats = useFormats();
  const { name, days, starts, stations, adjustPercent } = program;
  return (
    <tr>
      <td>
        <b>{name}</b>
      </td>
      <td className="days">{daysInWords(intl, formats, days)}</td>
      <td className="at">
        {[...starts]
          .sort()
          .map((clock) => clockInWords(formats, clock))
          .join(', ')}
      </td>
      <td className="stations">
        {stations.map(({ station, minutes, cycles, soakMinutes }) => (
          <span key={station}>
            <b>{station}:</b> {formats.number(minutes, 1)}
            {typeof cycles === 'number' && cycles > 1 && <FormattedMessage id="plan.cycles" values={{ cycles, soak: soakMinutes ?? 0 }} />}
          </span>
        ))}
      </td>
      <Num head={intl.formatMessage({ id: 'property.program.percent' })}>{formats.percent((adjustPercent ?? 100) / 100)}</Num>
      <Num head={intl.formatMessage({ id: 'property.program.total' })}>{formats.number(minutesOf(program))}</Num>
    </tr>
  );
}
