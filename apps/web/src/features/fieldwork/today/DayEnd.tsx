import type { FragmentType } from '@apollo/client';
import { FormattedMessage } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { DayEndRouteFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../page/use-masked.js';
import { useSays } from '../../../says/use-says.js';
import { dayEnd } from './day-end.js';

export const dayEndRoute = graphql(`
  fragment DayEndRoute on Route {
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
        leftNote
        finding {
          id
          kind
          litres
        }
      }
    }
  }
`);

/** What the day has come to: from the first stop that is closed on, counted on the phone. */
export function DayEnd({ route }: { readonly route: FragmentType<DayEndRouteFragment> }) {
  const { minutes } = useFormats();
  const { volume } = useSays();
  const { stops, closed, done, left, workedMinutes, litres } = dayEnd(useMasked(dayEndRoute, route).stops);
  if (closed === 0) return null;
  return (
    <section className="day-end">
      <h2>
        <FormattedMessage id={closed === stops ? 'field.dayEnd.over' : 'field.dayEnd.soFar'} />
      </h2>
      <p>
        <FormattedMessage
          id="field.dayEnd.done"
          values={{ closed, stops, done, minutes: workedMinutes === null ? 'none' : minutes(workedMinutes) }}
        />
      </p>
      <p>
        <FormattedMessage id="field.dayEnd.left" values={{ left, open: stops - closed }} />
      </p>
      {litres !== null && (
        <p>
          <FormattedMessage id="field.dayEnd.water" values={{ water: <b key="water">{volume(litres)}</b> }} />
        </p>
      )}
    </section>
  );
}
