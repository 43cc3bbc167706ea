import { FormattedMessage, useIntl } from 'react-intl';
import { Table } from '../../../ui/tables/Table.js';
import type { NamedStation } from '../../../programs/named-station.js';
import { PlanLine } from './PlanLine.js';
import type { PlanProgram } from './plan-rows.js';

interface Props {
  readonly program: PlanProgram;
  readonly stations: readonly NamedStation[];
  readonly hasPlan: boolean;
  /** The table's name and the heads of its two columns, where they are not planned beside now. */
  readonly words?: { readonly table: string; readonly planned: string; readonly present: string };
}

/** One program's lines, planned beside now. */
export function PlanTable({ program, stations, hasPlan, words }: Props) {
  const intl = useIntl();
  return (
    <Table
      name={words?.table ?? intl.formatMessage({ id: 'field.settings.table' }, { name: program.name })}
      look="plan"
      head={
        <tr>
          <th scope="col">
            <span className="vh">
              <FormattedMessage id="field.settings.setting" />
            </span>
          </th>
          {hasPlan && <th scope="col">{words?.planned ?? <FormattedMessage id="field.settings.planned" />}</th>}
          <th scope="col" className={hasPlan ? 'was' : undefined}>
            {words?.present ?? <FormattedMessage id="field.settings.now" />}
          </th>
        </tr>
      }
    >
      {program.rows.map((row) => (
        <PlanLine key={`${row.what} ${row.station ?? ''}`} row={row} stations={stations} hasPlan={hasPlan} />
      ))}
    </Table>
  );
}
