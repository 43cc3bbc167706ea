import { FormattedMessage, useIntl } from 'react-intl';
import type { ClientPropertyFragment } from '../../graphql/__generated__/graphql.js';
import type { Known } from '../../i18n/numbers.js';
import { useFormats } from '../../i18n/LanguageProvider.js';
import { useVolumeColumn } from '../../page/use-volume-column.js';
import { Head, Table } from '../../ui/tables/Table.js';

interface Props {
  readonly name: string;
  readonly accounts: ClientPropertyFragment['accounts'];
}

const VOLUMES = ['allowed', 'needed', 'metered'] as const;

/** The months of a property, the newest first: what was allowed, needed and metered, in one unit. */
export function MonthsOfProperty({ name, accounts }: Props) {
  const intl = useIntl();
  const formats = useFormats();
  // As a report writes its table of months: one quantity, one figure.
  const column = useVolumeColumn(Math.max(0, ...accounts.flatMap((account) => VOLUMES.map((of) => account[of].litres ?? 0))));
  const cell = (litres: Known) =>
    typeof litres === 'number' ? (
      column.figure(litres)
    ) : (
      <span className="soft">
        <FormattedMessage id="yourWater.notKnown" />
      </span>
    );
  return (
    <Table
      name={intl.formatMessage({ id: 'yourWater.months' }, { name })}
      look="ledger"
      head={
        <tr>
          <Head>
            <FormattedMessage id="yourWater.month" />
          </Head>
          {VOLUMES.map((of) => (
            <Head key={of} isNumber>
              <FormattedMessage id={`gauge.${of}`} />, {column.unit}
            </Head>
          ))}
        </tr>
      }
    >
      {[...accounts]
        .sort((a, b) => b.month.localeCompare(a.month))
        .map((account) => (
          <tr key={account.id}>
            <td>{formats.month(account.month)}</td>
            {VOLUMES.map((of) => (
              <td key={of} className="num">
                {cell(account[of].litres)}
              </td>
            ))}
          </tr>
        ))}
    </Table>
  );
}
