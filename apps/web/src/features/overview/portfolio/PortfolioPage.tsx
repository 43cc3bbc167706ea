import { useQuery } from '@apollo/client/react';
import { FormattedMessage } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { Fetched } from '../../../page/Fetched.js';
import { useAddress } from '../../../page/use-address.js';
import { Footnote } from '../../../ui/frame/Section.js';
import '../overview.css';
import { NoProperties } from '../NoProperties.js';
import { PortfolioAside } from './PortfolioAside.js';
import { PortfolioFilters } from './PortfolioFilters.js';
import { PortfolioHead } from './PortfolioHead.js';
import { RankedTable } from './RankedTable.js';
import { isNarrowed, portfolioAddress } from './urls.js';

export const portfolioDocument = graphql(`
  query Portfolio($month: Month, $filter: PortfolioFilter!, $sort: PortfolioSort!, $first: Int!) {
    portfolio(month: $month, filter: $filter, sort: $sort, first: $first) {
      month
      months
      through
      total
      next
      sums {
        properties
        overProperties
        aboveNeedLitres
        aboveNeedMoney
        settingsLitres
        unexplainedLitres
        unsplitLitres
        underProperties
        notCounted
      }
      rows {
        findingCount
        why {
          code
          details
        }
        property {
          id
          name
          latitude
          longitude
          client {
            id
            name
          }
        }
        account {
          id
          ...GaugedAccount
          allowed {
            litres
          }
          metered {
            litres
            estimatedShare
          }
          needed {
            estimatedShare
          }
          aboveNeed {
            litres
            within
            money
          }
          settingsGap {
            litres
          }
          unexplainedGap {
            litres
          }
        }
        topFinding {
          id
          kind
        }
        whoIsOnIt {
          id
          kind
          state
          day
          crew {
            id
            name
          }
        }
      }
    }
    crews {
      id
      name
    }
  }
`);

/** As many as the server gives at once; a company has tens to a few hundreds. */
const MOST_ROWS = 500;

/** Which properties waste the most water and money this month, why, and who is on it. */
export function PortfolioPage() {
  const [place, change] = useAddress(portfolioAddress);
  const { text, why, kind, who, month, sort } = place;
  const filter = { text: text || null, reason: why === 'every' ? null : why, kind, who };
  const query = useQuery(portfolioDocument, { variables: { month, filter, sort, first: MOST_ROWS }, fetchPolicy: 'cache-and-network' });
  const shown = { ...query, data: query.data ?? query.previousData };
  return (
    <Fetched query={shown}>
      {({ portfolio, crews }) =>
        portfolio.total === 0 && !isNarrowed(place) ? (
          <NoProperties />
        ) : (
          <>
            <PortfolioHead portfolio={portfolio} isNarrowed={isNarrowed(place)} />
            <div className="two">
              <div>
                <PortfolioFilters
                  place={place}
                  onChange={change}
                  months={portfolio.months}
                  shownMonth={portfolio.month}
                  through={portfolio.through}
                  crews={crews}
                />
                <RankedTable portfolio={portfolio} place={place} onChange={change} />
              </div>
              <PortfolioAside rows={portfolio.rows} month={portfolio.month} />
            </div>
            <Footnote>
              <FormattedMessage id="overview.foot" />
            </Footnote>
          </>
        )
      }
    </Fetched>
  );
}
