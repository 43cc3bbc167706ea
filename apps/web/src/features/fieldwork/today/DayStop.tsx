import type { FragmentType } from '@apollo/client';
import { FormattedMessage } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { DayStopOfRouteFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../page/use-masked.js';
import { useSays } from '../../../says/use-says.js';
import { stopPath } from '../urls.js';
import { useOrderWords } from '../use-order-words.js';

export const dayStopOfRoute = graphql(`
  fragment DayStopOfRoute on Stop {
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
    workOrders {
      id
      kind
      what
      waterAgainOn
      state
      estimateMinutes
    }
  }
`);

interface Props {
  readonly stop: FragmentType<DayStopOfRouteFragment>;
  readonly number: number;
}

/** One stop of the day: the property, where it is, and what to do. */
export function DayStop({ stop: masked, number }: Props) {
  const { id, property, visit, workOrders } = useMasked(dayStopOfRoute, masked);
  const { word } = useSays();
  const orderWords = useOrderWords();
  const where = [property.address, property.city].filter(Boolean).join(', ');
  const estimate = workOrders.reduce((sum, { estimateMinutes }) => sum + (estimateMinutes ?? 0), 0);
  return (
    <li className={visit?.closedAt ? 'is-done' : undefined}>
      <Link to={stopPath(id)}>
        <span className="n" aria-hidden="true">
          {number}
        </span>
        <span>
          <b>{property.name}</b>
          {where && <span className="line">{where}</span>}
          {workOrders.map((order) => (
            <span key={order.id} className="line">
              {orderWords(order)}
              {order.state === 'waiting for approval' && ` (${word('workState', order.state)})`}
            </span>
          ))}
          {workOrders.length === 0 && (
            <span className="line">
              <FormattedMessage id="field.today.noOrder" />
            </span>
          )}
          <span className="line state-line">
            <StateOfStop visit={visit ?? null} estimate={estimate} />
          </span>
        </span>
      </Link>
    </li>
  );
}

interface StateProps {
  readonly visit: { readonly arrivedAt: string; readonly closedAt?: string | null } | null;
  readonly estimate: number;
}

/** Closed, begun, or about how long it takes. */
function StateOfStop({ visit, estimate }: StateProps) {
  const { time, minutes } = useFormats();
  if (visit?.closedAt) return <FormattedMessage id="field.today.closed" values={{ time: time(visit.closedAt) }} />;
  if (visit) return <FormattedMessage id="field.today.arrived" values={{ time: time(visit.arrivedAt) }} />;
  return estimate > 0 ? <FormattedMessage id="field.today.about" values={{ minutes: minutes(estimate) }} /> : null;
}
