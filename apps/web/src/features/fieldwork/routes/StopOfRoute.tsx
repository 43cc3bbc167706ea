import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { StopOfRouteFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { paths } from '../../../page/paths.js';
import { useMasked } from '../../../page/use-masked.js';
import { useSays } from '../../../says/use-says.js';
import { OvertakenOrder } from '../settings-beside/OvertakenOrder.js';
import { stopPath } from '../urls.js';
import { useOrderWords } from '../use-order-words.js';

export const stopOfRoute = graphql(`
  fragment StopOfRoute on Stop {
    id
    property {
      id
      name
      address
      city
    }
    visit {
      id
      arrivedAt
      closedAt
    }
    withdrawnVisit {
      id
      arrivedAt
      withdrawnAt
      recordedBy
    }
    workOrders {
      id
      kind
      what
      waterAgainOn
      state
      estimateMinutes
      overtakenBy {
        orderId
        plannedAt
        state
      }
    }
  }
`);

interface Props {
  readonly stop: FragmentType<StopOfRouteFragment>;
  readonly number: number;
  /** Null at the end of the list. */
  readonly onUp: (() => void) | null;
  readonly onDown: (() => void) | null;
  readonly onMoveOrder: (orderId: string) => void;
}

/** One stop in the office's list: the place, its work, and where it stands in the day. */
export function StopOfRoute({ stop: masked, number, onUp, onDown, onMoveOrder }: Props) {
  const intl = useIntl();
  const { id, property, visit, withdrawnVisit, workOrders } = useMasked(stopOfRoute, masked);
  return (
    <li>
      <span className="n">{number}</span>
      <div>
        <Link to={paths.property(property.id)}>{property.name}</Link>{' '}
        <span className="soft xs">{[property.address, property.city].filter(Boolean).join(', ')}</span>
        <ul className="route-orders">
          {workOrders.map((order) => (
            <OrderOfStop key={order.id} order={order} isStopClosed={Boolean(visit?.closedAt)} onMove={() => onMoveOrder(order.id)} />
          ))}
        </ul>
        <StateOfVisit visit={visit ?? null} />
        {!visit && withdrawnVisit && <TakenBack visit={withdrawnVisit} />}
      </div>
      <div className="row-acts">
        {onUp && (
          <button
            type="button"
            className="link"
            aria-label={intl.formatMessage({ id: 'routes.upOf' }, { name: property.name })}
            onClick={onUp}
          >
            <FormattedMessage id="routes.up" />
          </button>
        )}
        {onDown && (
          <button
            type="button"
            className="link"
            aria-label={intl.formatMessage({ id: 'routes.downOf' }, { name: property.name })}
            onClick={onDown}
          >
            <FormattedMessage id="routes.down" />
          </button>
        )}
        <Link to={stopPath(id)}>
          <FormattedMessage id="routes.open" />
        </Link>
      </div>
    </li>
  );
}

function StateOfVisit({ visit }: { readonly visit: { readonly arrivedAt: string; readonly closedAt?: string | null } | null }) {
  const { time } = useFormats();
  if (!visit) return null;
  return (
    <p className="soft xs">
      {visit.closedAt ? (
        <FormattedMessage id="field.today.closed" values={{ time: time(visit.closedAt) }} />
      ) : (
        <FormattedMessage id="field.today.arrived" values={{ time: time(visit.arrivedAt) }} />
      )}
    </p>
  );
}

function TakenBack({
  visit: { arrivedAt, withdrawnAt, recordedBy },
}: {
  readonly visit: NonNullable<StopOfRouteFragment['withdrawnVisit']>;
}) {
  const { time } = useFormats();
  return (
    <p className="soft xs">
      <FormattedMessage
        id="routes.begunByMistake"
        values={{
          arrived: time(arrivedAt),
          takenBack: time(withdrawnAt),
          name: recordedBy ?? 'nobody',
          isNamed: String(Boolean(recordedBy)),
        }}
      />
    </p>
  );
}

interface OrderProps {
  readonly order: StopOfRouteFragment['workOrders'][number];
  /** The crew has left: what it did not end is not given to another, but planned again. */
  readonly isStopClosed: boolean;
  readonly onMove: () => void;
}

function OrderOfStop({ order, isStopClosed, onMove }: OrderProps) {
  const intl = useIntl();
  const { minutes } = useFormats();
  const { word } = useSays();
  const what = useOrderWords()(order);
  const isGivenOut = order.state === 'given out';
  const stateWords = isGivenOut ? intl.formatMessage({ id: 'routes.notEnded' }) : word('workState', order.state);
  return (
    <li>
      {what} <span className="soft">{isGivenOut && !isStopClosed ? minutes(order.estimateMinutes) : stateWords}</span>{' '}
      {isGivenOut && (
        <button
          type="button"
          className="link"
          aria-label={intl.formatMessage({ id: isStopClosed ? 'routes.giveAgainOf' : 'routes.moveOf' }, { what })}
          onClick={onMove}
        >
          <FormattedMessage id={isStopClosed ? 'routes.giveAgain' : 'routes.move'} />
        </button>
      )}
      <OvertakenOrder by={order.overtakenBy} />
    </li>
  );
}
