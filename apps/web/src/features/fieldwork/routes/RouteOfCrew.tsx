import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { RouteOfCrewFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useDeed } from '../../../page/use-deed.js';
import { useMasked } from '../../../page/use-masked.js';
import { ErrorState } from '../../../ui/states/States.js';
import { CrewSoFar } from './live/CrewSoFar.js';
import { StopOfRoute } from './StopOfRoute.js';

export const routeOfCrew = graphql(`
  fragment RouteOfCrew on Route {
    id
    note
    ...CrewSoFar
    crew {
      id
      name
      members {
        id
        person {
          id
          name
        }
      }
    }
    stops {
      id
      version
      position
      workOrders {
        id
        estimateMinutes
      }
      ...StopOfRoute
    }
  }
`);

const moveStopDocument = graphql(`
  mutation MoveStop($id: ID!, $version: Int!, $position: Int!) {
    moveStop(id: $id, version: $version, position: $position) {
      id
      version
      stops {
        id
        version
        position
      }
    }
  }
`);

interface Props {
  readonly route: FragmentType<RouteOfCrewFragment>;
  readonly onMoveOrder: (orderId: string) => void;
}

/** One crew's stops in their order, each one up or down with a press. */
export function RouteOfCrew({ route: masked, onMoveOrder }: Props) {
  const intl = useIntl();
  const { minutes } = useFormats();
  const route = useMasked(routeOfCrew, masked);
  const { crew, note, stops } = route;
  const move = useDeed(moveStopDocument, { refetch: ['Routes'] });
  const work = stops.flatMap(({ workOrders }) => workOrders).reduce((sum, { estimateMinutes }) => sum + (estimateMinutes ?? 0), 0);
  /** The stop takes the place of its neighbour, whatever numbers the places have. */
  const to = (at: number, neighbour: number) => {
    const stop = stops[at];
    const other = stops[neighbour];
    return stop && other ? () => void move.run({ id: stop.id, version: stop.version, position: other.position }) : null;
  };
  return (
    <section aria-label={crew.name}>
      <div className="crew-line">
        <h2>
          <FormattedMessage id="routes.crew" values={{ crew: crew.name, stops: stops.length }} />
        </h2>
        <span className="soft">
          {crew.members.map(({ person }) => person.name).join(', ')}
          {work > 0 && <> · {intl.formatMessage({ id: 'routes.work' }, { minutes: minutes(work) })}</>}
        </span>
      </div>
      {note && <p>{note}</p>}
      <CrewSoFar route={route} />
      {move.problem ? <ErrorState problem={move.problem} /> : null}
      <ol className="route-stops">
        {stops.map((stop, at) => (
          <StopOfRoute key={stop.id} stop={stop} number={at + 1} onUp={to(at, at - 1)} onDown={to(at, at + 1)} onMoveOrder={onMoveOrder} />
        ))}
      </ol>
    </section>
  );
}
