import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import type { RouteOfCrewFragment } from '../../../graphql/__generated__/graphql.js';
import { ButtonLink } from '../../../ui/forms/Button.js';
import { EmptyState } from '../../../ui/states/States.js';
import { RouteOfCrew } from './RouteOfCrew.js';

interface Props {
  readonly routes: readonly (FragmentType<RouteOfCrewFragment> & { readonly id: string; readonly crew: { readonly id: string } })[];
  readonly crews: readonly { readonly id: string; readonly name: string }[];
  readonly onMoveOrder: (orderId: string) => void;
}

/** Each crew's day; one that has nothing yet says so. */
export function CrewDays({ routes, crews, onMoveOrder }: Props) {
  const intl = useIntl();
  if (crews.length === 0)
    return (
      <EmptyState
        sentence={intl.formatMessage({ id: 'routes.noCrews' })}
        action={<ButtonLink to="/setup/crews">{intl.formatMessage({ id: 'routes.toCrews' })}</ButtonLink>}
      >
        <FormattedMessage id="routes.noCrewsHow" />
      </EmptyState>
    );
  const idle = crews.filter(({ id }) => !routes.some(({ crew }) => crew.id === id));
  return (
    <div className="crew-days">
      {routes.map((route) => (
        <RouteOfCrew key={route.id} route={route} onMoveOrder={onMoveOrder} />
      ))}
      {idle.length > 0 && (
        <p className="soft">
          <FormattedMessage id="routes.idle" values={{ crews: idle.map(({ name }) => name).join(', '), count: idle.length }} />
        </p>
      )}
    </div>
  );
}
