import { useEffect, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';

const SECOND_MS = 1000;

/** Minutes and seconds as a stop watch shows them. */
function asClock(ms: number): string {
  const seconds = Math.max(0, Math.floor(ms / SECOND_MS));
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}

/** The clock of a test that runs; it began on the phone, and runs on when the page is left. */
export function RunningClock({ sinceMs }: { readonly sinceMs: number }) {
  const intl = useIntl();
  const [nowMs, setNow] = useState(Date.now);
  useEffect(() => {
    const every = setInterval(() => setNow(Date.now()), SECOND_MS / 2);
    return () => clearInterval(every);
  }, []);
  return (
    <>
      <div className="register" role="timer" aria-label={intl.formatMessage({ id: 'field.flow.clock' })}>
        <b>{asClock(nowMs - sinceMs)}</b>
        <span>
          <FormattedMessage id="unit.min" />
        </span>
      </div>
      <p className="judged">
        <FormattedMessage id="field.flow.running" />
      </p>
    </>
  );
}
