import type { FragmentType } from '@apollo/client';
import { FormattedMessage } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { CrewSoFarFragment } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../../page/use-masked.js';

const crewSoFar = graphql(`
  fragment CrewSoFar on Route {
    id
    stops {
      id
      property {
        id
        name
      }
      visit {
        id
        arrivedAt
        closedAt
      }
    }
  }
`);

/** How far a crew is: done of how many, and where it is now. Nothing before its first arrival. */
export function CrewSoFar({ route }: { readonly route: FragmentType<CrewSoFarFragment> }) {
  const { time } = useFormats();
  const { stops } = useMasked(crewSoFar, route);
  const closed = stops.filter(({ visit }) => visit?.closedAt).length;
  const now = stops.findLast(({ visit }) => visit && !visit.closedAt);
  if (closed === 0 && !now) return null;
  return (
    <p className="soft">
      <FormattedMessage
        id="routes.crewSoFar"
        values={{
          stops: stops.length,
          closed,
          isThere: String(now !== undefined),
          name: now?.property.name ?? '',
          time: time(now?.visit?.arrivedAt ?? null),
        }}
      />
    </p>
  );
}
