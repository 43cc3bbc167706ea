import type { FragmentType } from '@apollo/client';
import { FormattedMessage } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { DayStopOfRouteFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../page/use-masked.js';
import { useSays } from '../../../says/use-says.js';
import { stopPath } from '../urls.js';

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
  const { time, minutes } = useFormats();
  const { word } = useSays();
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
          {workOrders.map(({ id: order, kind, what, state }) => (
            <span key={order} className="line">
              {word('work', kind)}
              {what && `: ${what}`}
              {state === 'waiting for approval' && ` (${word('workState', state)})`}
            </span>
          ))}
          {workOrders.length === 0 && (
            <span className="line">
              <FormattedMessage id="field.today.noOrder" />
            </span>
          )}
          <span className="line state-line">
            {visit?.closedAt ? (
              <FormattedMessage id="field.today.closed" values={{ time: time(visit.closedAt) }} />
            ) : visit ? (
              <FormattedMessage id="field.today.arrived" values={{ time: time(visit.arrivedAt) }} />
            ) : (
              estimate > 0 && <FormattedMessage id="field.today.about" values={{ minutes: minutes(estimate) }} />
            )}
          </span>
        </span>
      </Link>
    </li>
  );
}
