import type { FragmentType } from '@apollo/client';
import { useCallback, useEffect, useRef } from 'react';
import { useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { VisitedStopFragment } from '../../../graphql/__generated__/graphql.js';
import { useOutbox, usePhone } from '../../../offline/PhoneProvider.js';
import type { Operation } from '../../../offline/operation.js';
import { useMasked } from '../../../page/use-masked.js';
import { useViewer } from '../../../session/viewer.js';
import type { Clock } from '../device/use-clock.js';
import { useToday } from '../today/use-today.js';
import { useSave } from '../device/use-save.js';
import { arrivalOf, ownArrival, takenBackOf, withdrawalOf } from './arrive/take-back.js';

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
  /** Takes back an arrival by mistake; null where there is none of this phone, or something was done since. */
  readonly takeBack: (() => void) | null;
}

interface Options {
  readonly stop: FragmentType<VisitedStopFragment>;
  readonly route: { readonly day: string; readonly crew: { readonly id: string } };
  readonly clock: Clock;
}

/** The visit to this stop. To look at it is not to be there: it begins when the crew says that it is here, or with the first deed. */
export function useVisit({ stop: masked, route, clock: { now, isSet } }: Options): VisitHere {
  const viewer = useViewer();
  const today = useToday();
  const { id: stopId, visit } = useMasked(visitedStop, masked);
  const { operations } = useOutbox();
  const known = visit ?? null;
  const isMine = viewer.crewIds.includes(route.crew.id) && route.day === today;
  const own = ownArrival(operations, stopId);
  // Who does something at a visit that another phone began has come too, and says so first.
  const joins = isMine && own === null && !known?.closedAt;
  const begin = useBegin({ stopId, knownId: known?.id ?? null, joins, now });
  const arrive = useCallback(() => {
    if (isSet && isMine) void begin();
  }, [isSet, isMine, begin]);
  const takeBack = useTakeBack(stopId, takenBackOf(operations, own, known));
  return { visit: known, begin, arrive, takeBack };
}

interface Beginning {
  readonly stopId: string;
  readonly knownId: string | null;
  readonly joins: boolean;
  readonly now: () => Date;
}

/** Says once that the crew is here, and by what name it speaks of the visit. */
function useBegin({ stopId, knownId, joins, now }: Beginning): () => Promise<string | null> {
  const intl = useIntl();
  const save = useSave();
  const begun = useRef<Promise<string | null> | null>(null);
  useEffect(() => {
    // What was taken back begins anew.
    if (knownId === null) begun.current = null;
  }, [knownId]);
  return useCallback((): Promise<string | null> => {
    if (knownId && !joins) return Promise.resolve(knownId);
    begun.current ??= save({
      kind: 'arrive',
      payloadVersion: 1,
      subject: arrivalOf(stopId),
      words: intl.formatMessage({ id: 'field.what.arrival' }),
      body: JSON.stringify({ stopId, arrivedAt: now().toISOString() }),
    }).then((saved) => {
      // Tried again at the next deed.
      if (!saved) begun.current = null;
      return saved && (knownId ?? saved.key);
    });
    return begun.current;
  }, [knownId, joins, stopId, now, save, intl]);
}

/** What never left is taken out of the outbox; what may have left is taken back by a word of its own. */
function useTakeBack(stopId: string, arrival: Operation | null): (() => void) | null {
  const intl = useIntl();
  const phone = usePhone();
  const save = useSave();
  const takeBack = async (visitId: string): Promise<void> => {
    try {
      await phone.happen({ type: 'withdrawn', subject: arrivalOf(stopId) });
    } catch (problem) {
      // The phone itself remembers what went wrong and shows it.
      if (phone.trouble === null) throw problem;
      return;
    }
    if (!phone.outbox.operations.some(({ key }) => key === visitId)) return;
    const words = intl.formatMessage({ id: 'field.what.takenBack' });
    await save({ kind: 'withdraw-visit', payloadVersion: 1, subject: withdrawalOf(visitId), words, body: JSON.stringify({ visitId }) });
  };
  return arrival && (() => void takeBack(arrival.key));
}
