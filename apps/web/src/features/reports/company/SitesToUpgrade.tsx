import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import type { CompanyMonthQuery } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { paths } from '../../../page/paths.js';
import { useSays } from '../../../says/use-says.js';
import { Section } from '../../../ui/frame/Section.js';
import { Head, Table } from '../../../ui/tables/Table.js';

/** Sites whose plants need more than is allowed: no crew's visit mends that. */
export function SitesToUpgrade({ sites }: { readonly sites: CompanyMonthQuery['ownersMonth']['sitesToUpgrade'] }) {
  const intl = useIntl();
  const { money } = useFormats();
  const { volume } = useSays();
  return (
    <Section
      heading={intl.formatMessage({ id: 'company.sites' }, { count: sites.length })}
      note={sites.length > 0 && <FormattedMessage id="company.sites.why" />}
    >
      {sites.length > 0 && (
        <Table
          look="ledger"
          name={intl.formatMessage({ id: 'company.sites.table' })}
          head={
            <tr>
              <Head>
                <FormattedMessage id="company.site" />
              </Head>
              <Head isNumber>
                <FormattedMessage id="company.beyond" />
              </Head>
              <Head isNumber>
                <FormattedMessage id="company.money" />
              </Head>
            </tr>
          }
        >
          {sites.map(({ propertyId, name, ...amounts }) => (
            <tr key={propertyId}>
              <td>
                <Link to={paths.property(propertyId)}>{name}</Link>
              </td>
              <td className="num">{volume(amounts.litres)}</td>
              <td className="num">{typeof amounts.money === 'number' ? money(amounts.money) : '–'}</td>
            </tr>
          ))}
        </Table>
      )}
    </Section>
  );
}
