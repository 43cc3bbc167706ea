import { useApolloClient } from '@apollo/client/react';
import { createContext, type ReactNode, useContext, useEffect, useMemo } from 'react';
import { FormattedMessage } from 'react-intl';
import { nextBatch, nextPicture } from '../../../offline/outbox.js';
import { openPhoneAhead, PhoneProvider, usePhone } from '../../../offline/PhoneProvider.js';
import { Sender } from '../../../offline/sender.js';
import { OWNER, storeName } from '../../../offline/store.js';
import { rememberedMember } from '../../../session/remembered-viewer.js';
import { useViewer } from '../../../session/viewer.js';
import { ErrorState, LoadingState } from '../../../ui/states/States.js';
import { organizationNow } from './clock.js';
import { phoneNameOf } from '../phone-name.js';
import { postOf } from './post.js';
import { type Clock, useClock } from './use-clock.js';

/** The clock of the organization, and the way to send what was saved. */
export interface Field {
  readonly clock: Clock;
  /** Sends now; asked while it sends, once more after. */
  readonly sendNow: () => Promise<void>;
  /** Sends when fingers rest. */
  readonly sendSoon: (restMs?: number) => void;
}

const FieldContext = createContext<Field | null>(null);

/** So long nobody taps again: what is said twice in that time leaves once. */
const REST_MS = 500;
const EVERY_MS = 60_000;
/** Signal comes and goes: what was not answered is tried again soon, then less and less often. */
const LEAST_DELAY_MS = 2_500;

/** Opens the phone of whoever was signed in here last, before it is known who asks. */
export async function openFieldPhone(): Promise<void> {
  const member = rememberedMember();
  if (member) await openPhoneAhead(storeName(member.organizationId, member.memberId), () => organizationNow(member.organizationId));
}

/** The phone of the person who is signed in: every page of the field stands inside. */
export function FieldPhone({ children }: { readonly children: ReactNode }) {
  const { memberId, organization } = useViewer();
  const clock = useClock(organization.id);
  return (
    <PhoneProvider
      name={storeName(organization.id, memberId)}
      now={clock.now}
      waiting={<LoadingState />}
      cannotKeep={(problem) => (
        <>
          <p className="problem" role="alert">
            <FormattedMessage id="field.phone.keepsNothing" />
          </p>
          <ErrorState problem={problem} />
        </>
      )}
    >
      <Sending clock={clock}>{children}</Sending>
    </PhoneProvider>
  );
}

interface Props {
  readonly clock: Clock;
  readonly children: ReactNode;
}

/** Sends at the start, when signal comes back, when the page is looked at, every minute, and after each save. */
function Sending({ clock, children }: Props) {
  const phone = usePhone();
  const client = useApolloClient();
  const field = useMemo((): Field & { readonly stop: () => void } => {
    const sender = new Sender(
      phone,
      postOf(client, __APP_VERSION__, undefined, (id) => phoneNameOf(navigator.userAgent, id)),
      clock.now,
    );
    let timer: ReturnType<typeof setTimeout> | undefined;
    let delayMs = LEAST_DELAY_MS;
    const sendNow = async (): Promise<void> => {
      await sender.run().catch((problem: unknown) => {
        // What the phone could not write down it says itself, above the dock.
        if (phone.trouble === null) throw problem;
      });
      clearTimeout(timer);
      const isLeft = nextBatch(phone.outbox).length > 0 || nextPicture(phone.outbox) !== null;
      delayMs = isLeft ? Math.min(EVERY_MS, delayMs * 2) : LEAST_DELAY_MS;
      if (isLeft && !phone.isShut) timer = setTimeout(() => void sendNow(), delayMs);
    };
    const sendSoon = (restMs: number = REST_MS): void => {
      clearTimeout(timer);
      timer = setTimeout(() => void sendNow(), restMs);
    };
    return { clock, sendNow, sendSoon, stop: () => clearTimeout(timer) };
  }, [phone, client, clock]);
  const { name } = useViewer().person;
  useEffect(() => {
    // Whose this is: told to others who sign in on this phone. A full phone goes on without.
    phone.keepFact(OWNER, name).catch(() => undefined);
  }, [phone, name]);
  useEffect(() => {
    const send = (): void => void field.sendNow();
    const looked = (): void => {
      if (document.visibilityState === 'visible') send();
    };
    send();
    const every = setInterval(send, EVERY_MS);
    window.addEventListener('online', send);
    document.addEventListener('visibilitychange', looked);
    return () => {
      field.stop();
      clearInterval(every);
      window.removeEventListener('online', send);
      document.removeEventListener('visibilitychange', looked);
    };
  }, [field]);
  return <FieldContext value={field}>{children}</FieldContext>;
}

/** The clock and the way to send. */
export function useField(): Field {
  const field = useContext(FieldContext);
  if (!field) throw new Error('useField stands outside of FieldPhone.');
  return field;
}
