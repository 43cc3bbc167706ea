import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../graphql/__generated__/gql.js';
import type { ClientAccountFragment, ClientPropertyFragment } from '../../graphql/__generated__/graphql.js';
import { useFormats } from '../../i18n/LanguageProvider.js';
import { AccountGauge } from '../../page/drawing/AccountGauge.js';
import { useMasked } from '../../page/use-masked.js';
import { useSays } from '../../says/use-says.js';
import { Section } from '../../ui/frame/Section.js';
import { MonthsOfProperty } from './MonthsOfProperty.js';
import { waterSentence } from './water-sentence.js';

export const clientProperty = graphql(`
  fragment ClientProperty on Property {
    id
    name
    address
    city
    accounts {
      id
      month
      allowed {
        litres
      }
      needed {
        litres
      }
      metered {
        litres
      }
    }
  }
`);

export const clientAccount = graphql(`
  fragment ClientAccount on MonthAccount {
    id
    month
    through
    daysCovered
    daysInMonth
    needed {
      litres
    }
    metered {
      litres
      reason {
        code
        details
      }
    }
    aboveNeed {
      litres
      within
      money
    }
    ...GaugedAccount
  }
`);

interface Props {
  readonly property: FragmentType<ClientPropertyFragment>;
  /** The account of the month that is shown; null where there is none. */
  readonly account: FragmentType<ClientAccountFragment> | null;
}

/** One property of the client: the answer as a sentence, its gauge, and its months. */
export function ClientProperty({ property: masked, account }: Props) {
  const { name, address, city, accounts } = useMasked(clientProperty, masked);
  const where = [address, city].filter(Boolean).join(', ');
  return (
    <>
      {account ? <AccountOfProperty account={account} name={name} where={where} /> : <NoAccount name={name} where={where} />}
      {accounts.length > 1 && <MonthsOfProperty name={name} accounts={accounts} />}
    </>
  );
}

interface AccountProps {
  readonly account: FragmentType<ClientAccountFragment>;
  readonly name: string;
  readonly where: string;
}

function AccountOfProperty({ account: masked, name, where }: AccountProps) {
  const intl = useIntl();
  const formats = useFormats();
  const says = useSays();
  const account = useMasked(clientAccount, masked);
  return (
    <Section heading={waterSentence({ intl, formats, says }, name, account)} note={where}>
      {account.daysCovered < account.daysInMonth && (
        <p className="soft">
          <FormattedMessage id="yourWater.through" values={{ day: formats.dayInWords(account.through) }} />
        </p>
      )}
      <AccountGauge account={account} size="fit" />
    </Section>
  );
}

function NoAccount({ name, where }: Omit<AccountProps, 'account'>) {
  return (
    <Section heading={name} note={where}>
      <p className="soft">
        <FormattedMessage id="yourWater.noAccount" />
      </p>
    </Section>
  );
}
