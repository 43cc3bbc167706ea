import { createContext, type ReactNode, useContext, useEffect, useState, useSyncExternalStore } from 'react';
import { askToKeep, type Room, roomOnPhone } from './room.js';
import { type Outbox, type Waiting, waitingIn } from './outbox.js';
import { Phone } from './phone.js';

const PhoneContext = createContext<Phone | null>(null);

/** A phone that is being opened before it is drawn. */
interface Ahead {
  readonly opening: Promise<Phone>;
  phone: Phone | null;
}

/** By the phone's name; whoever draws it first has it, opened or on the way. */
const ahead = new Map<string, Ahead>();

/** Opens what this phone holds before its page is drawn: a page opened cold shows at once what is on the phone. Where it fails the page says so. */
export async function openPhoneAhead(name: string, now: () => Date): Promise<void> {
  const entry: Ahead = { opening: Phone.open(name, { now }), phone: null };
  ahead.set(name, entry);
  await entry.opening.then(
    (opened) => {
      entry.phone = opened;
    },
    () => ahead.delete(name),
  );
}

interface Props {
  readonly name: string;
  readonly now: () => Date;
  /** While the store is opened. */
  readonly waiting: ReactNode;
  /** Where the browser keeps nothing: what to do about it. */
  readonly cannotKeep: (problem: unknown) => ReactNode;
  readonly children: ReactNode;
}

/** Opens what this phone holds for one person; everything below can save without signal. */
export function PhoneProvider({ name, now, waiting, cannotKeep, children }: Props) {
  const [phone, setPhone] = useState<Phone | null>(() => ahead.get(name)?.phone ?? null);
  const [problem, setProblem] = useState<unknown>(null);
  useEffect(() => {
    let isGone = false;
    const here = ahead.get(name);
    ahead.delete(name);
    const opening = here?.opening ?? Phone.open(name, { now });
    opening.then(
      (opened) => {
        if (!isGone) setPhone(opened);
      },
      (thrown: unknown) => {
        if (!isGone) setProblem(thrown ?? new Error('The store did not open.'));
      },
    );
    void askToKeep();
    return () => {
      isGone = true;
      setPhone(null);
      void opening.then(
        (opened) => opened.close(),
        () => undefined,
      );
    };
  }, [name, now]);
  if (problem) return cannotKeep(problem);
  return phone ? <PhoneContext value={phone}>{children}</PhoneContext> : waiting;
}

/** What this phone holds. */
export function usePhone(): Phone {
  const phone = useContext(PhoneContext);
  if (!phone) throw new Error('usePhone stands outside of PhoneProvider.');
  return phone;
}

/** The outbox as it is now. */
export function useOutbox(): Outbox {
  const phone = usePhone();
  return useSyncExternalStore(phone.subscribe, () => phone.outbox);
}

/** What is still on this phone. */
export const useWaiting = (): Waiting => waitingIn(useOutbox());

/** How much room there is, asked again whenever something was saved or sent; null until it is known, or where the browser does not tell. */
export function useRoom(): Room | null {
  const { operations } = useOutbox();
  const [room, setRoom] = useState<Room | null>(null);
  useEffect(() => {
    let isGone = false;
    void roomOnPhone().then((told) => {
      if (!isGone && operations) setRoom(told);
    });
    return () => {
      isGone = true;
    };
  }, [operations]);
  return room;
}
