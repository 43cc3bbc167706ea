import { useQuery } from '@apollo/client/react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../graphql/__generated__/gql.js';
import { Fetched } from '../../page/Fetched.js';
import { MonthSelect } from '../../page/MonthSelect.js';
import { useAddress } from '../../page/use-address.js';
import { PageHead } from '../../ui/frame/PageHead.js';
import { Footnote } from '../../ui/frame/Section.js';
import { EmptyState } from '../../ui/states/States.js';
import { AskOffice } from './AskOffice.js';
import { ClientProperty } from './ClientProperty.js';
import { ReportsSent } from './ReportsSent.js';
import { ToApprove } from './ToApprove.js';
import { waterAddress } from './urls.js';
import './water.css';

export const waterDocument = graphql(`
  query YourWater($month: Month) {
    properties {
      id
      name
      account(month: $month) {
        id
        month
        through
        ...ClientAccount
      }
      accounts {
        id
        month
      }
      ...ClientProperty
    }
    waterReports {
      id
      state
      ...ReportSent
    }
    recommendations {
      id
      ...ToApprove
    }
    clientQuestions {
      id
      ...OwnQuestion
    }
  }
`);

/** What a client sees: their properties, what each took and needed, and their reports. Nothing else. */
export function WaterPage() {
  const intl = useIntl();
  const [{ month }, change] = useAddress(waterAddress);
  const query = useQuery(waterDocument, { variables: { month }, fetchPolicy: 'cache-and-network' });
  const shown = { ...query, data: query.data ?? query.previousData };
  return (
    <Fetched query={shown}>
      {({ properties, waterReports, recommendations, clientQuestions }) => {
        if (properties.length === 0)
          return (
            <EmptyState sentence={intl.formatMessage({ id: 'yourWater.empty' })}>
              <FormattedMessage id="yourWater.emptyHow" />
            </EmptyState>
          );
        const months = [...new Set(properties.flatMap(({ accounts }) => accounts.map((account) => account.month)))].sort();
        const account = properties.find((property) => property.account)?.account ?? null;
        const chosen = month ?? account?.month ?? months.at(-1) ?? null;
        return (
          <>
            <PageHead
              sentence={intl.formatMessage({ id: 'yourWater.title' }, { count: properties.length })}
              lede={<FormattedMessage id="yourWater.lede" />}
              tab={intl.formatMessage({ id: 'frame.water' })}
              actions={
                chosen && (
                  <MonthSelect months={months} shown={chosen} through={account?.through} onChange={(next) => change({ month: next })} />
                )
              }
            />
            {properties.map((property) => (
              <ClientProperty key={property.id} property={property} account={property.account ?? null} />
            ))}
            <ToApprove lines={recommendations} />
            <ReportsSent reports={waterReports.filter(({ state }) => state === 'sent')} />
            <AskOffice questions={clientQuestions} properties={properties} />
            <Footnote>
              <FormattedMessage id="yourWater.foot" />
            </Footnote>
          </>
        );
      }}
    </Fetched>
  );
}
