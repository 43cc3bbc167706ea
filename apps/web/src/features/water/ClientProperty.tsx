import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../graphql/__generated__/gql.js';
import type { ClientPropertyFragment } from '../../graphql/__generated__/graphql.js';
import { useFormats } from '../../i18n/LanguageProvider.js';
import { AccountGauge } from '../../page/AccountGauge.js';
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
    account(month: $month) {
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
    accounts {
      id
      month
      ...MonthOfProperty
    }
  }
`);

/** One property of the client: the answer as a sentence, its gauge, and its months. */
export function ClientProperty({ property: masked }: { readonly property: FragmentType<ClientPropertyFragment> }) {
  const intl = useIntl();
  const formats = useFormats();
  const says = useSays();
  const { name, address, city, account, accounts } = useMasked(clientProperty, masked);
  const where = [address, city].filter(Boolean).join(', ');
  const isPart = account && account.daysCovered < account.daysInMonth;
  return (
    <Section heading={waterSentence({ intl, formats, says }, name, account ?? null)} note={where}>
      {account ? (
        <>
          {isPart && (
            <p className="soft">
              <FormattedMessage id="yourWater.through" values={{ day: formats.dayInWords(account.through) }} />
            </p>
          )}
          <AccountGauge account={account} size="fit" />
        </>
      ) : (
        <p className="soft">
          <FormattedMessage id="yourWater.noAccount" />
        </p>
      )}
      {accounts.length > 1 && <MonthsOfProperty name={name} accounts={accounts} />}
    </Section>
  );
}
