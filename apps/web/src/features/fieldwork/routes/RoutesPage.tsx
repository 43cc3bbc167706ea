import { useQuery } from '@apollo/client/react';
import { useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { RoutesQuery } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { Fetched } from '../../../page/Fetched.js';
import { useAddress } from '../../../page/use-address.js';
import { mayDo, useViewer } from '../../../session/viewer.js';
import { Button, ButtonLink } from '../../../ui/forms/Button.js';
import { PageHead } from '../../../ui/frame/PageHead.js';
import '../fieldwork.css';
import { PhonesLine } from '../phones/PhonesLine.js';
import { DaySwitch } from '../today/DaySwitch.js';
import { AssignDialog } from './orders/AssignDialog.js';
import { CrewDays } from './CrewDays.js';
import { NewOrderDialog } from './orders/NewOrderDialog.js';
import { DaySoFar } from './live/DaySoFar.js';
import { useLiveDay } from './live/use-live-day.js';
import { OrdersToApprove } from './orders/OrdersToApprove.js';
import { OrdersToGiveOut } from './orders/OrdersToGiveOut.js';
import { monthPlanPath } from './month-urls.js';
import { NEW_ORDER, routesAddress } from './urls.js';

export const routesDocument = graphql(`
  query Routes($day: Date!) {
    routes(from: $day, until: $day) {
      id
      crew {
        id
      }
      stops {
        id
        workOrders {
          id
          version
          what
          kind
        }
      }
      ...RouteOfCrew
      ...DaySoFar
    }
    crews {
      id
      name
    }
    open: workOrders(state: ["open"]) {
      id
      version
      what
      kind
      ...OrderToGiveOut
    }
    waiting: workOrders(state: ["waiting for approval"]) {
      id
      ...OrderToApprove
    }
    properties {
      id
      name
    }
  }
`);

/** Crews and days: who goes where in which order, what nobody has yet, and what waits for approval. */
export function RoutesPage() {
  const intl = useIntl();
  const viewer = useViewer();
  const formats = useFormats();
  const [place, change] = useAddress(routesAddress);
  const { today } = viewer.organization;
  const day = place.day ?? today;
  const query = useQuery(routesDocument, { variables: { day }, fetchPolicy: 'cache-and-network' });
  const isLive = useLiveDay(day === today, query.refetch);
  const shown = { ...query, data: query.data ?? query.previousData };
  const close = (): void => change({ order: null });
  return (
    <Fetched query={shown}>
      {({ routes, crews, open, waiting, properties }) => (
        <>
          <PageHead
            crumb={formats.dayInWords(day)}
            sentence={intl.formatMessage(
              { id: 'routes.title' },
              { stops: routes.flatMap((route) => route.stops).length, open: open.length, waiting: waiting.length },
            )}
            tab={intl.formatMessage({ id: 'frame.routes' })}
            actions={
              <>
                <DaySwitch day={day} today={today} onChange={(next) => change({ day: next === today ? null : next })} />
                {mayDo(viewer, 'plan months') && (
                  <ButtonLink to={monthPlanPath(day.slice(0, 7))}>{intl.formatMessage({ id: 'monthPlan.tab' })}</ButtonLink>
                )}
                <Button kind="main" onClick={() => change({ order: NEW_ORDER })}>
                  {intl.formatMessage({ id: 'routes.new' })}
                </Button>
              </>
            }
          />
          {day === today && <DaySoFar routes={routes} isLive={isLive} />}
          {mayDo(viewer, 'decide findings') && <PhonesLine />}
          <CrewDays routes={routes} crews={crews} onMoveOrder={(order) => change({ order })} />
          {waiting.length > 0 && <OrdersToApprove orders={waiting} mayApprove={mayDo(viewer, 'approve work')} />}
          <OrdersToGiveOut orders={open} onGiveOut={(order) => change({ order })} />
          <AssignDialog order={orderOf(place.order, open, routes)} crews={crews} day={day} onClose={close} />
          <NewOrderDialog isOpen={place.order === NEW_ORDER} properties={properties} onClose={close} />
        </>
      )}
    </Fetched>
  );
}

/** The order that the address names, among those that can be given to a crew. */
const orderOf = (id: string | null, open: RoutesQuery['open'], routes: RoutesQuery['routes']) =>
  [...open, ...routes.flatMap(({ stops }) => stops.flatMap(({ workOrders }) => workOrders))].find((order) => order.id === id) ?? null;
