import type { FragmentType } from '@apollo/client';
import { FormattedMessage } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { DaySoFarFragment } from '../../../../graphql/__generated__/graphql.js';
import { useMaskedList } from '../../../../page/use-masked.js';
import { useSays } from '../../../../says/use-says.js';
import { dayEnd } from '../../today/day-end.js';

const daySoFar = graphql(`
  fragment DaySoFar on Route {
    id
    stops {
      id
      visit {
        id
        closedAt
        workedMinutes
      }
      workOrders {
        id
        state
        finding {
          id
          kind
          litres
        }
      }
    }
  }
`);

interface Props {
  readonly routes: readonly FragmentType<DaySoFarFragment>[];
  readonly isLive: boolean;
}

/** What all crews have done today, what is left, and the water in it. */
export function DaySoFar({ routes, isLive }: Props) {
  const { volume } = useSays();
  const { stops, closed, done, left, litres } = dayEnd(useMaskedList(daySoFar, routes).flatMap((route) => route.stops));
  if (stops === 0) return null;
  return (
    <p className="so-far" aria-live="polite">
      <FormattedMessage id="routes.soFar" values={{ stops, closed, done, left }} />{' '}
      {litres !== null && (
        <>
          <FormattedMessage id="field.dayEnd.water" values={{ water: <b key="water">{volume(litres)}</b> }} />{' '}
        </>
      )}
      <span className="soft">
        <FormattedMessage id={isLive ? 'routes.live' : 'routes.asked'} />
      </span>
    </p>
  );
}
