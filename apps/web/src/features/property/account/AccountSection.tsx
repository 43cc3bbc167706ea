import type { FragmentType } from '@apollo/client';
import { useIntl } from 'react-intl';
import { MARKS } from '@rillbook/showing/gauge/drawing/model.js';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type {
  AccountOfPropertyFragment,
  CautionsOfPropertyFragment,
  FindingsOfPropertyFragment,
  OrdinanceYearOfPropertyFragment,
} from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { AccountGauge, gaugedAccount } from '../../../page/drawing/AccountGauge.js';
import { useMasked } from '../../../page/use-masked.js';
import { useVolumeColumn } from '../../../page/use-volume-column.js';
import type { Names } from '../../../says/names.js';
import { Section } from '../../../ui/frame/Section.js';
import { EmptyState } from '../../../ui/states/States.js';
import { Cautions } from './Cautions.js';
import { OrdinanceYear } from './OrdinanceYear.js';
import { allowanceVerdict } from './verdict.js';
import { WhyItIsOff } from './WhyItIsOff.js';

const accountOfProperty = graphql(`
  fragment AccountOfProperty on MonthAccount {
    id
    month
    through
    daysCovered
    daysInMonth
    overLitres
    underLitres
    ...GaugedAccount
  }
`);

interface Props {
  readonly account: FragmentType<AccountOfPropertyFragment> | null;
  readonly property: FragmentType<FindingsOfPropertyFragment> &
    FragmentType<CautionsOfPropertyFragment> &
    FragmentType<OrdinanceYearOfPropertyFragment>;
  readonly month: string | null;
  readonly names: Names;
}

/** The large gauge, and beside it why it is off. */
export function AccountSection({ account, property, month, names }: Props) {
  const intl = useIntl();
  const formats = useFormats();
  if (account) return <KnownAccount account={account} property={property} names={names} />;
  return (
    <>
      <EmptyState sentence={intl.formatMessage({ id: 'property.account.none' }, { month: formats.month(month) })}>
        {intl.formatMessage({ id: 'property.account.none.how' })}
      </EmptyState>
      <Cautions property={property} />
    </>
  );
}

function KnownAccount({
  account: masked,
  property,
  names,
}: Omit<Props, 'month' | 'account'> & { readonly account: FragmentType<AccountOfPropertyFragment> }) {
  const intl = useIntl();
  const formats = useFormats();
  const account = useMasked(accountOfProperty, masked);
  const gauged = useMasked(gaugedAccount, account);
  const column = useVolumeColumn(Math.max(0, ...MARKS.map((mark) => gauged[mark].litres ?? 0)));
  const note = intl.formatMessage(
    { id: 'property.account.days' },
    { days: formats.days(`${account.month}-01`, account.through), covered: account.daysCovered, all: account.daysInMonth },
  );
  return (
    <Section heading={allowanceVerdict(gauged, column, { intl, formats })} note={note}>
      <div className="acct-grid">
        <div>
          <AccountGauge account={account} size="fit" names={names} />
          <OrdinanceYear property={property} names={names} />
        </div>
        <div>
          <WhyItIsOff
            account={account}
            overLitres={account.overLitres ?? null}
            underLitres={account.underLitres ?? null}
            property={property}
            names={names}
          />
          <Cautions property={property} />
        </div>
      </div>
    </Section>
  );
}
