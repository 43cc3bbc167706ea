import { useQuery } from '@apollo/client/react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { Fetched } from '../../../../page/Fetched.js';
import { paths } from '../../../../page/paths.js';
import { useAddress } from '../../../../page/use-address.js';
import { PageHead } from '../../../../ui/frame/PageHead.js';
import { thingsAddress } from '../../urls.js';
import { supplier } from '../kinds/supplier.js';
import { ThingsSection } from '../list/ThingsSection.js';
import { RatesSection } from './RatesSection.js';
import { RulesSection } from './RulesSection.js';

const suppliersDocument = graphql(`
  query SetupSuppliers {
    waterSuppliers {
      ...WaterSupplierFields @unmask
      rules {
        ...WateringRuleFields @unmask
      }
      rateTiers {
        ...RateTierFields @unmask
      }
    }
  }
`);

const isInUse = ({ retiredAt }: { readonly retiredAt?: string | null }): boolean => !retiredAt;

/** Who delivers the water, what they allow and what they charge. */
export function SuppliersPage() {
  const intl = useIntl();
  const [place, change] = useAddress(thingsAddress);
  const query = useQuery(suppliersDocument, { fetchPolicy: 'cache-and-network' });
  const usual = { place, onPlace: change, refetch: ['SetupSuppliers'] };
  return (
    <Fetched query={query}>
      {({ waterSuppliers }) => {
        const found = new Map(waterSuppliers.map((one) => [one.id, one]));
        const rules = waterSuppliers.flatMap((one) => one.rules).filter(isInUse);
        const rates = waterSuppliers.flatMap((one) => one.rateTiers).filter(isInUse);
        return (
          <>
            <PageHead
              sentence={intl.formatMessage({ id: 'setup.suppliers.title' })}
              lede={<FormattedMessage id="setup.suppliers.lede" />}
            />
            <ThingsSection
              {...usual}
              kind={supplier}
              things={waterSuppliers}
              nameOf={({ id }) => found.get(id)?.name ?? ''}
              links={({ id }) => (
                <Link to={paths.ruleChange(id)}>
                  <FormattedMessage id="ruleChange.open" />
                </Link>
              )}
              about={({ id }) =>
                intl.formatMessage(
                  { id: 'setup.suppliers.about' },
                  {
                    rules: rules.filter(({ supplierId }) => supplierId === id).length,
                    tiers: rates.filter(({ supplierId }) => supplierId === id).length,
                  },
                )
              }
            />
            <RulesSection {...usual} rules={rules} suppliers={waterSuppliers} />
            <RatesSection {...usual} rates={rates} suppliers={waterSuppliers} />
          </>
        );
      }}
    </Fetched>
  );
}
