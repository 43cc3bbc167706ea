import { FormattedMessage, useIntl } from 'react-intl';
import { KEPT_DAYS, type Operation } from '../../../offline/operation.js';
import { disputedIn, isRefused } from '../../../offline/outbox.js';
import { useOutbox, usePhone, useWaiting } from '../../../offline/PhoneProvider.js';
import { Button } from '../../../ui/forms/Button.js';
import { OthersUnsent } from '../../../session/OthersUnsent.js';
import { usePageTitle } from '../../../ui/frame/PageHead.js';
import { PhoneFrame } from '../../../ui/phone/PhoneFrame.js';
import { useField } from '../device/FieldPhone.js';
import { phoneNameOf } from '../phone-name.js';
import { SentLine } from '../device/SentLine.js';
import '../fieldwork.css';
import { DisputedOperations } from './DisputedOperations.js';
import { ExportUnsent } from './ExportUnsent.js';
import { KeepHere } from './KeepHere.js';
import { OperationLine } from './OperationLine.js';
import { RefusedOperations } from './RefusedOperations.js';
import { RoomOnPhone } from './RoomOnPhone.js';
import { SignOut } from './SignOut.js';

const isSent = ({ state }: Operation): boolean => state === 'sent';

/** What is on this phone: what waits, what was refused and why, what was sent; and how much room there is. */
export function PhonePage() {
  const intl = useIntl();
  const phone = usePhone();
  const outbox = useOutbox();
  const { operations } = outbox;
  const { waiting, photos, refused } = useWaiting();
  const { sendNow, clock } = useField();
  usePageTitle(intl.formatMessage({ id: 'field.phone.title' }));
  const ask = async (keys: readonly string[]): Promise<void> => {
    await phone.happen({ type: 'asked again', keys });
    await sendNow();
  };
  const disputed = disputedIn(outbox);
  const sent = operations.filter((one) => isSent(one) && !isRefused(one) && !disputed.includes(one)).toReversed();
  const setAside = (key: string, why: string): void => void phone.happen({ type: 'set aside', key, why, at: clock.now().toISOString() });
  const open = operations.filter((one) => !isSent(one) && !isRefused(one));
  return (
    <PhoneFrame
      back={{ to: '/today', words: intl.formatMessage({ id: 'frame.today' }) }}
      status={<SentLine />}
      actions={
        <Button kind="main" onClick={() => void sendNow()}>
          <FormattedMessage id="field.phone.sendNow" />
        </Button>
      }
    >
      <h1>
        <FormattedMessage id="field.phone.waiting" values={{ count: waiting, photos }} />
      </h1>
      {photos > 0 && (
        <p className="where">
          <FormattedMessage id="field.phone.photos" values={{ count: photos }} />
        </p>
      )}
      <OthersUnsent />
      <p className="where">
        <FormattedMessage id="field.phone.named" values={{ name: phoneNameOf(navigator.userAgent, phone.deviceId) }} />
      </p>
      <RoomOnPhone />
      <KeepHere />
      <OperationList operations={open} />
      <RefusedOperations onAgain={(key) => void ask([key])} onSetAside={setAside} />
      <DisputedOperations onSeen={(key) => setAside(key, '')} />
      {(open.length > 0 || refused > 0) && <ExportUnsent />}
      <h2 className="crew-name">
        <FormattedMessage id="field.phone.sent" values={{ days: KEPT_DAYS }} />
      </h2>
      <SentOperations operations={sent} onAgain={(keys) => void ask(keys)} />
      <SignOut />
    </PhoneFrame>
  );
}

interface SentProps {
  readonly operations: readonly Operation[];
  readonly onAgain: (keys: readonly string[]) => void;
}

function SentOperations({ operations, onAgain }: SentProps) {
  if (operations.length === 0)
    return (
      <p className="where">
        <FormattedMessage id="field.phone.noneSent" />
      </p>
    );
  return (
    <>
      <OperationList operations={operations} />
      <p className="after">
        <Button kind="plain" onClick={() => onAgain(operations.map(({ key }) => key))}>
          <FormattedMessage id="field.phone.resend" />
        </Button>
      </p>
    </>
  );
}

function OperationList({ operations }: { readonly operations: readonly Operation[] }) {
  return (
    <ul className="operations">
      {operations.map((one) => (
        <OperationLine key={one.key} operation={one} />
      ))}
    </ul>
  );
}
