import { FormattedMessage } from 'react-intl';
import { useDayPacket } from './use-day-packet.js';

/** Whether the day can be worked without signal: every stop of it is on the phone. */
export function Readiness({ stopIds }: { readonly stopIds: readonly string[] }) {
  const ready = useDayPacket(stopIds);
  if (stopIds.length === 0) return null;
  return (
    <p className="where" role="status">
      <FormattedMessage id="field.phone.isReady" values={{ ready, count: stopIds.length, isAll: String(ready === stopIds.length) }} />
    </p>
  );
}
