import { useIntl } from 'react-intl';
import type { SetupSuppliersQuery } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import type { ThingsPlace } from '../../urls.js';
import { thing } from '../fields/field-spec.js';
import { rate } from '../kinds/rate.js';
import { ThingsSection } from '../list/ThingsSection.js';

type Supplier = SetupSuppliersQuery['waterSuppliers'][number];

interface Props {
  readonly rates: readonly Supplier['rateTiers'][number][];
  readonly suppliers: readonly Pick<Supplier, 'id' | 'name'>[];
  readonly place: ThingsPlace;
  readonly onPlace: (place: Partial<ThingsPlace>) => void;
  readonly refetch: readonly string[];
}

const rateOfSupplier = { ...rate, fields: [thing('supplierId', true), ...rate.fields] };

/** What the water costs, tier by tier. */
export function RatesSection({ rates, suppliers, ...usual }: Props) {
  const intl = useIntl();
  const { price, dayOfYear, number, percent } = useFormats();
  const limitOf = (limit: number, { upToIs, unit }: Supplier['rateTiers'][number]): string =>
    upToIs === 'share of allowance'
      ? intl.formatMessage({ id: 'setup.rate.ofAllowance' }, { share: percent(limit) })
      : `${number(limit, 2)} ${unit}`;
  const found = new Map(rates.map((one) => [one.id, one]));
  const names = new Map(suppliers.map(({ id, name }) => [id, name]));
  return (
    <ThingsSection
      {...usual}
      kind={rateOfSupplier}
      things={rates}
      choices={{ supplierId: suppliers.map(({ id, name }) => ({ value: id, words: name })) }}
      nameOf={({ id }) => {
        const one = found.get(id);
        return one ? intl.formatMessage({ id: 'setup.rate.name' }, { tier: one.tier, price: price(one.price, 4), unit: one.unit }) : '';
      }}
      about={({ id }) => {
        const one = found.get(id);
        if (!one) return null;
        const upTo = typeof one.upTo === 'number' ? limitOf(one.upTo, one) : 'none';
        return intl.formatMessage(
          { id: 'setup.rate.about' },
          { supplier: names.get(one.supplierId) ?? '', day: dayOfYear(one.effectiveFrom), upTo },
        );
      }}
    />
  );
}
