import type { FragmentType } from '@apollo/client';
import { FormattedMessage } from 'react-intl';
import { litresFrom } from '@rillbook/units/volume.js';
import type { DoubtOfAccountFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../page/use-masked.js';
import { Footnote } from '../../../ui/frame/Section.js';
import { doubtOfAccount } from './DoubtSection.js';

/** In what unit a price is told: a thousand gallons, or a cubic metre. */
const PRICE_UNITS = { us: ['kgal', litresFrom(1, 'kgal')], metric: ['m³', litresFrom(1, 'm3')] } as const;

/** When the account was computed and at what price its water is reckoned. */
export function AccountFoot({ account: masked }: { readonly account: FragmentType<DoubtOfAccountFragment> }) {
  const { computedAt, pricePerLitre } = useMasked(doubtOfAccount, masked);
  const { moment, price, units } = useFormats();
  const [unit, litres] = PRICE_UNITS[units];
  return (
    <Footnote>
      <FormattedMessage id="property.foot" values={{ when: moment(computedAt) }} />{' '}
      {typeof pricePerLitre === 'number' && (
        <FormattedMessage id="property.foot.price" values={{ price: price(pricePerLitre * litres), unit }} />
      )}
    </Footnote>
  );
}
