import { FormattedMessage, useIntl } from 'react-intl';
import type { CompanyMonthQuery } from '../../../graphql/__generated__/graphql.js';
import { Section } from '../../../ui/frame/Section.js';
import { Head, Table } from '../../../ui/tables/Table.js';

/** What each crew did in the month: stops on its routes, visits it ended, work orders done; and all that was done. */
export function CrewsOfMonth({ crews, ordersDone }: Pick<CompanyMonthQuery['ownersMonth'], 'crews' | 'ordersDone'>) {
  const intl = useIntl();
  const visits = crews.reduce((sum, crew) => sum + crew.visits, 0);
  return (
    <Section
      heading={intl.formatMessage({ id: 'company.crews' }, { visits })}
      note={<FormattedMessage id="company.ordersDone.all" values={{ count: ordersDone }} />}
    >
      {crews.length > 0 && (
        <Table
          look="ledger"
          name={intl.formatMessage({ id: 'company.crews.table' })}
          head={
            <tr>
              <Head>
                <FormattedMessage id="company.crew" />
              </Head>
              {(['stops', 'visits', 'ordersDone'] as const).map((head) => (
                <Head key={head} isNumber>
                  <FormattedMessage id={`company.${head}`} />
                </Head>
              ))}
            </tr>
          }
        >
          {crews.map(({ name, ...counts }) => (
            <tr key={name}>
              <td>{name}</td>
              <td className="num">{counts.stops}</td>
              <td className="num">{counts.visits}</td>
              <td className="num">{counts.ordersDone}</td>
            </tr>
          ))}
        </Table>
      )}
    </Section>
  );
}
