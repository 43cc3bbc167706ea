import { useQuery } from '@apollo/client/react';
import type { ReactNode } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { CompanyMonthQuery } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { Fetched } from '../../../page/Fetched.js';
import { MonthSelect } from '../../../page/MonthSelect.js';
import { useAddress } from '../../../page/use-address.js';
import { useSays } from '../../../says/use-says.js';
import { PageHead } from '../../../ui/frame/PageHead.js';
import { Footnote } from '../../../ui/frame/Section.js';
import { newestWhole } from '../drafting/period.js';
import { reportsAddress } from '../urls.js';
import { CrewsOfMonth } from './CrewsOfMonth.js';
import { FindingsOfMonth } from './FindingsOfMonth.js';
import { SitesToUpgrade } from './SitesToUpgrade.js';

export const companyMonthsDocument = graphql(`
  query CompanyMonths {
    portfolio(first: 1) {
      month
      months
      through
    }
  }
`);
export const companyMonthDocument = graphql(`
  query CompanyMonth($month: Month!) {
    ownersMonth(month: $month) {
      month
      savedLitres
      halfWidthLitres
      savedMoney
      toldOf
      notToldOf
      findings {
        kind
        opened
        resolved
        open
        litres
        lackingLitres
        money
      }
      ordersDone
      crews {
        name
        stops
        visits
        ordersDone
      }
      sitesToUpgrade {
        propertyId
        name
        litres
        money
      }
    }
  }
`);

/** The owner's report: what the company saved in a month, what it found, what its crews did, and which sites need an upgrade. */
export function CompanyMonthPage() {
  const [place, change] = useAddress(reportsAddress);
  const months = useQuery(companyMonthsDocument);
  return (
    <Fetched query={months}>
      {({ portfolio }) => {
        const month = place.month ?? newestWhole(portfolio.months, portfolio.month, portfolio.through);
        const select = (
          <MonthSelect
            months={portfolio.months}
            shown={month}
            through={portfolio.through}
            onChange={(next) => change({ month: next, report: null })}
          />
        );
        return <Shown key={month} month={month} select={select} />;
      }}
    </Fetched>
  );
}

function Shown({ month, select }: { readonly month: string; readonly select: ReactNode }) {
  const query = useQuery(companyMonthDocument, { variables: { month }, fetchPolicy: 'cache-and-network' });
  return <Fetched query={query}>{({ ownersMonth }) => <Told told={ownersMonth} select={select} />}</Fetched>;
}

function Told({ told, select }: { readonly told: CompanyMonthQuery['ownersMonth']; readonly select: ReactNode }) {
  const intl = useIntl();
  return (
    <>
      <PageHead
        sentence={useSavedSentence(told)}
        lede={<FormattedMessage id="company.lede" values={{ told: told.toldOf, notTold: told.notToldOf }} />}
        tab={intl.formatMessage({ id: 'reports.company' })}
        actions={select}
      />
      <FindingsOfMonth findings={told.findings} />
      <CrewsOfMonth crews={told.crews} ordersDone={told.ordersDone} />
      <SitesToUpgrade sites={told.sitesToUpgrade} />
      <Footnote>
        <FormattedMessage id="company.foot" />
      </Footnote>
    </>
  );
}

/** What was saved, with how sure that is; what chance alone could give is said so. */
function useSavedSentence({ month, savedLitres, halfWidthLitres, savedMoney, toldOf }: CompanyMonthQuery['ownersMonth']): string {
  const intl = useIntl();
  const formats = useFormats();
  const { volume } = useSays();
  const isSure = Math.abs(savedLitres) > halfWidthLitres;
  const values = {
    month: formats.month(month),
    litres: (savedLitres < 0 && !isSure ? '−' : '') + volume(Math.abs(savedLitres)),
    half: volume(halfWidthLitres),
    money: typeof savedMoney === 'number' ? formats.money(Math.abs(savedMoney)) : 'none',
  };
  const id = toldOf === 0 ? 'company.none' : !isSure ? 'company.unsure' : savedLitres > 0 ? 'company.saved' : 'company.more';
  return intl.formatMessage({ id }, values);
}
