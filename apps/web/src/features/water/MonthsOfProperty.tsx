import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import type { MonthOfPropertyFragment } from '../../graphql/__generated__/graphql.js';
import { Head, Table } from '../../ui/tables/Table.js';
import { MonthOfProperty } from './MonthOfProperty.js';

interface Props {
  readonly name: string;
  readonly accounts: readonly (FragmentType<MonthOfPropertyFragment> & { readonly id: string; readonly month: string })[];
}

/** The months of a property, the newest first. */
export function MonthsOfProperty({ name, accounts }: Props) {
  const intl = useIntl();
  return (
    <Table
      name={intl.formatMessage({ id: 'yourWater.months' }, { name })}
      look="ledger"
      head={
        <tr>
          <Head>
            <FormattedMessage id="yourWater.month" />
          </Head>
          <Head isNumber>
            <FormattedMessage id="gauge.allowed" />
          </Head>
          <Head isNumber>
            <FormattedMessage id="gauge.needed" />
          </Head>
          <Head isNumber>
            <FormattedMessage id="gauge.metered" />
          </Head>
        </tr>
      }
    >
      {[...accounts]
        .sort((a, b) => b.month.localeCompare(a.month))
        .map((account) => (
          <MonthOfProperty key={account.id} account={account} />
        ))}
    </Table>
  );
}
