import type { FragmentType } from '@apollo/client';
import { useCallback, useRef } from 'react';
import { useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { VisitedStopFragment } from '../../../graphql/__generated__/graphql.js';
import { useMasked } from '../../../page/use-masked.js';
import { useViewer } from '../../../session/viewer.js';
import type { Clock } from '../device/use-clock.js';
import { useToday } from '../today/use-today.js';
import { useSave } from '../device/use-save.js';

export const visitedStop = graphql(`
  fragment VisitedStop on Stop {
    id
    visit {
      id
      version
      arrivedAt
      closedAt
    }
  }
`);

type Visit = NonNullable<VisitedStopFragment['visit']>;

export interface VisitHere {
  readonly visit: Visit | null;
  /** The id of the visit, begun now where nobody has arrived yet; null where the phone could not keep it. */
  readonly begin: () => Promise<string | null>;
  /** Says that the crew is here: for those who go with it on its day. Others only look, until they do something. */
  readonly arrive: () => void;
}

interface Options {
  readonly stop: FragmentType<VisitedStopFragment>;
  readonly route: { readonly day: string; readonly crew: { readonly id: string } };
  readonly clock: Clock;
}

/** The visit to this stop. To look at it is not to be there: it begins when the crew says that it is here, or with the first deed. */
export function useVisit({ stop: masked, route, clock: { now, isSet } }: Options): VisitHere {
  const intl = useIntl();
  const viewer = useViewer();
  const today = useToday();
  const save = useSave();
  const { id: stopId, visit } = useMasked(visitedStop, masked);
  const begun = useRef<Promise<string | null> | null>(null);
  const known = visit ?? null;
  const knownId = known?.id ?? null;
  const begin = useCallback((): Promise<string | null> => {
    if (knownId) return Promise.resolve(knownId);
    begun.current ??= save({
      kind: 'arrive',
      payloadVersion: 1,
      subject: `arrive ${stopId}`,
      words: intl.formatMessage({ id: 'field.what.arrival' }),
      body: JSON.stringify({ stopId, arrivedAt: now().toISOString() }),
    }).then((saved) => {
      // Tried again at the next deed.
      if (!saved) begun.current = null;
      return saved?.key ?? null;
    });
    return begun.current;
  }, [knownId, stopId, now, save, intl]);
  const isMine = viewer.crewIds.includes(route.crew.id) && route.day === today;
  const arrive = useCallback(() => {
    if (isSet && isMine) void begin();
  }, [isSet, isMine, begin]);
  return { visit: known, begin, arrive };
}
