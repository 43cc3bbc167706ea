import { useIntl } from 'react-intl';
import type { PropertyPageQuery } from '../../../graphql/__generated__/graphql.js';
import { paths } from '../../../page/paths.js';
import { YearOfGauges } from '../../../page/drawing/YearOfGauges.js';
import type { Names } from '../../../says/names.js';
import { Section } from '../../../ui/frame/Section.js';

interface Props {
  readonly accounts: NonNullable<PropertyPageQuery['property']>['accounts'];
  readonly month: string | null;
  readonly propertyId: string;
  readonly names: Names;
}

const MONTHS_SHOWN = 12;

/** The twelve months up to the one that is shown. */
export function YearSection({ accounts, month, propertyId, names }: Props) {
  const intl = useIntl();
  const shown = accounts.filter((account) => month === null || account.month <= month).slice(-MONTHS_SHOWN);
  if (shown.length < 2) return null;
  const above = shown.filter(({ aboveNeed }) => (aboveNeed.litres ?? 0) > 0 && !aboveNeed.within).length;
  return (
    <Section
      heading={intl.formatMessage({ id: 'property.year' }, { count: above, all: shown.length })}
      note={intl.formatMessage({ id: 'property.year.note' })}
    >
      <YearOfGauges accounts={shown} chosen={month} names={names} hrefOf={(one) => paths.property(propertyId, one)} />
    </Section>
  );
}
