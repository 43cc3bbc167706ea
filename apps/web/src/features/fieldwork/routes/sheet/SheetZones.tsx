import { FormattedMessage, useIntl } from 'react-intl';
import { Head, Table } from '../../../../ui/tables/Table.js';

/** What a zone walk looks for, in the order of the phone's buttons. */
const SEEN = ['broken head', 'leak', 'clogged', 'overspray', 'coverage', 'wilting'] as const;

interface Props {
  readonly zones: readonly {
    readonly id: string;
    readonly name: string;
    readonly station?: number | null;
    readonly controllerId?: string | null;
  }[];
  readonly controllers: readonly { readonly id: string; readonly name: string }[];
}

/** The zones to walk, in the crew's order: how many of each was seen is written in its column. */
export function SheetZones({ zones, controllers }: Props) {
  const intl = useIntl();
  if (zones.length === 0) return null;
  const several = controllers.length > 1;
  const controllerOf = (id: string | null | undefined): string => controllers.find((one) => one.id === id)?.name ?? '';
  return (
    <Table
      name={intl.formatMessage({ id: 'sheet.zones' })}
      isTight
      head={
        <tr>
          <Head>
            <FormattedMessage id="sheet.zones" />
          </Head>
          {SEEN.map((kind) => (
            <Head key={kind}>
              <FormattedMessage id={`field.seen.${kind}`} />
            </Head>
          ))}
          <Head>
            <FormattedMessage id="sheet.zoneNote" />
          </Head>
        </tr>
      }
    >
      {zones.map(({ id, name, station, controllerId }) => (
        <tr key={id}>
          <th scope="row">{[several ? controllerOf(controllerId) : '', station ?? '', name].filter((word) => word !== '').join(' ')}</th>
          {SEEN.map((kind) => (
            <td key={kind} className="blank" />
          ))}
          <td className="blank" />
        </tr>
      ))}
    </Table>
  );
}
