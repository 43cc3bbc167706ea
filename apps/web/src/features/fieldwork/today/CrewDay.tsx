import type { FragmentType } from '@apollo/client';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { CrewDayRouteFragment } from '../../../graphql/__generated__/graphql.js';
import { useMasked } from '../../../page/use-masked.js';
import { DayStop } from './DayStop.js';

export const crewDayRoute = graphql(`
  fragment CrewDayRoute on Route {
    id
    note
    crew {
      id
      name
    }
    stops {
      id
      ...DayStopOfRoute
    }
  }
`);

interface Props {
  readonly route: FragmentType<CrewDayRouteFragment>;
  readonly isNamed: boolean;
}

/** One crew's stops in their order. */
export function CrewDay({ route: masked, isNamed }: Props) {
  const { crew, note, stops } = useMasked(crewDayRoute, masked);
  return (
    <>
      {isNamed && <h2 className="crew-name">{crew.name}</h2>}
      {note && <p className="where">{note}</p>}
      <ol className="day-stops" aria-label={crew.name}>
        {stops.map((stop, at) => (
          <DayStop key={stop.id} stop={stop} number={at + 1} />
        ))}
      </ol>
    </>
  );
}
