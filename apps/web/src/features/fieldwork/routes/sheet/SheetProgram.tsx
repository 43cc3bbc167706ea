import { FormattedMessage, useIntl } from 'react-intl';
import type { NamedStation } from '../../../../programs/named-station.js';
import { Head, Table } from '../../../../ui/tables/Table.js';
import { Setting, settingName } from '../../settings-beside/PlanLine.js';
import type { PlanRow } from '../../settings-beside/plan-rows.js';

interface Props {
  /** null where nobody has recorded a program: then there is room for two */
  readonly name: string | null;
  readonly rows: readonly PlanRow[];
  readonly stations: readonly NamedStation[];
  readonly has: { readonly planned: boolean; readonly present: boolean };
}

/** One program on paper: planned, now, and a column to write in. What differs is bold and marked, also in black and white. */
export function SheetProgram({ name, rows, stations, has }: Props) {
  const intl = useIntl();
  const words =
    name === null ? intl.formatMessage({ id: 'sheet.noProgram' }) : intl.formatMessage({ id: 'field.settings.program' }, { name });
  return (
    <Table
      name={words}
      isTight
      head={
        <tr>
          <Head>{words}</Head>
          {has.planned && (
            <Head>
              <FormattedMessage id="field.settings.planned" />
            </Head>
          )}
          {has.present && (
            <Head>
              <FormattedMessage id="field.settings.now" />
            </Head>
          )}
          {name === null ? (
            ['A', 'B'].map((letter) => <Head key={letter}>{letter}</Head>)
          ) : (
            <Head>
              <FormattedMessage id="sheet.write" />
            </Head>
          )}
        </tr>
      }
    >
      {rows.map((row) => (
        <tr key={`${row.what} ${row.station ?? ''}`} className={row.differs ? 'differs' : undefined}>
          <th scope="row">
            {row.differs && <span className="mark">▸ </span>}
            {settingName(intl, row, stations)}
          </th>
          {has.planned && (
            <td>
              <Setting row={row} program={row.planned} />
            </td>
          )}
          {has.present && (
            <td>
              <Setting row={row} program={row.present} />
            </td>
          )}
          <td className="blank" />
          {name === null && <td className="blank" />}
        </tr>
      ))}
    </Table>
  );
}
