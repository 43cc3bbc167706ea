import { useApolloClient } from '@apollo/client/react';
import { useState } from 'react';
import { useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useDeed } from '../../../../page/use-deed.js';
import { useToast } from '../../../../ui/dialogs/Toasts.js';
import type { BoardShape, BoardStop, CarriedTo } from './board.js';

const carryDocument = graphql(`
  mutation CarryStop($id: ID!, $version: Int!, $to: CarryInput!) {
    carryStop(id: $id, version: $version, to: $to) {
      id
      version
      locked
      position
    }
  }
`);

export interface Carry {
  readonly run: (stop: BoardStop, to: CarriedTo) => Promise<boolean>;
  readonly problem: unknown;
  readonly isBusy: boolean;
  /** The stop that was carried last, which keeps the keyboard; it has another id on another day. */
  readonly carriedId: string | null;
}

/** Carries a stop and says so, with the way back. */
export function useCarry(crewName: (id: string) => string): Carry {
  const intl = useIntl();
  const { dayInWords } = useFormats();
  const toast = useToast();
  const client = useApolloClient();
  const deed = useDeed(carryDocument);
  const [isBusy, setBusy] = useState(false);
  const [carriedId, setCarriedId] = useState<string | null>(null);
  /** Until the board shows it: a key pressed sooner would carry what stands somewhere else. A carry that failed may have met another planner's. */
  const send = async (sent: { readonly id: string; readonly version: number; readonly to: CarriedTo }) => {
    setBusy(true);
    const answer = await deed.run(sent);
    // What the board itself cannot fetch, its page says.
    await client.refetchQueries({ include: ['MonthPlan'] }).catch(() => undefined);
    setBusy(false);
    return answer?.carryStop ?? null;
  };
  const run = async (stop: BoardStop, to: CarriedTo): Promise<boolean> => {
    const carried = await send({ id: stop.id, version: stop.version, to });
    if (!carried) return false;
    const { id, version } = carried;
    setCarriedId(id);
    const back = { crewId: stop.crewId, day: stop.day, position: stop.position, locked: stop.locked };
    const stays = stop.crewId === to.crewId && stop.day === to.day && stop.position === to.position;
    const words = stays
      ? intl.formatMessage({ id: to.locked ? 'monthPlan.lockedNow' : 'monthPlan.freeNow' }, { name: stop.name })
      : intl.formatMessage({ id: 'monthPlan.carried' }, { name: stop.name, crew: crewName(to.crewId), day: dayInWords(to.day) });
    toast({
      words,
      onUndo: () => void send({ id, version, to: back }).then((undone) => setCarriedId(undone?.id ?? null)),
    });
    return true;
  };
  return { run, problem: deed.problem, isBusy, carriedId };
}

/** What every day of the board shares. */
export interface Board {
  readonly shape: BoardShape;
  readonly all: readonly BoardStop[];
  readonly carry: Carry;
  readonly isPast: boolean;
  readonly onMove: (stopId: string) => void;
}

/** The kind of what is dragged: nothing but a stop of this board is taken. */
export const STOP_TYPE = 'application/x-rillbook-stop';
