import { useSyncExternalStore } from 'react';
import { FormattedMessage } from 'react-intl';
import { arePagesKept, onNewVersion } from '../../../session/new-version.js';
import { useDayPacket } from './use-day-packet.js';

type Props = Parameters<typeof useDayPacket>[0];

/** Whether the day can be worked without signal: every stop of it is on the phone, and so are the pages that show them. */
export function Readiness(day: Props) {
  const ready = useDayPacket(day);
  const hasPages = useSyncExternalStore(onNewVersion, arePagesKept);
  const count = day.stopIds.length;
  if (count === 0) return null;
  return (
    <p className="where" role="status">
      {hasPages ? (
        <FormattedMessage id="field.phone.isReady" values={{ ready, count, isAll: String(ready === count) }} />
      ) : (
        <FormattedMessage id="field.phone.pagesNotKept" />
      )}
    </p>
  );
}
