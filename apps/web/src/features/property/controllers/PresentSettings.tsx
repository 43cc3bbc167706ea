import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useSays } from '../../../says/use-says.js';
import { Head, Num, Table } from '../../../ui/tables/Table.js';
import { clockInWords, daysInWords } from './days-in-words.js';
import { type ComparedProgram, type ComparedSettings, minutesOf } from './settings-changes.js';

interface Props {
  readonly settings: ComparedSettings;
  readonly name: string;
}

/** The programs that are on a controller now; where it is not on, that is what matters. */
export function PresentSettings({ settings: { state, programs }, name }: Props) {
  const intl = useIntl();
  const { word } = useSays();
  return (
    <>
      {state !== 'on' && (
        <p>
          <b>
            {state === 'weather' ? (
              <FormattedMessage id="property.controller.weather" />
            ) : (
              <FormattedMessage id="property.controller.state" values={{ state: word('controller', state) }} />
            )}
          </b>
        </p>
      )}
      {programs.length > 0 && (
        <Table
          name={intl.formatMessage({ id: 'property.program.table' }, { name })}
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
      )}
    </>
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
      <td>{daysInWords(intl, formats, days)}</td>
      <td>
        {[...starts]
          .sort()
          .map((clock) => clockInWords(formats, clock))
          .join(', ')}
      </td>
      <td className="stations">
        {stations.map(({ station, minutes }) => (
          <span key={station}>
            <span className="soft">{station}</span> {formats.number(minutes, 1)}
          </span>
        ))}
      </td>
      <Num>{formats.percent((adjustPercent ?? 100) / 100)}</Num>
      <Num>{formats.number(minutesOf(program))}</Num>
    </tr>
  );
}
