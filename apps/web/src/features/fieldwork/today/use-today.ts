import { useSyncExternalStore } from 'react';
import { localTimeAt } from '../../../page/values/local-instant.js';
import { useViewer } from '../../../session/viewer.js';
import { useField } from '../device/FieldPhone.js';

const EVERY_MS = 60_000;

/** A page that lay open over night is looked at in the morning. */
function onTime(tell: () => void): () => void {
  const every = setInterval(tell, EVERY_MS);
  document.addEventListener('visibilitychange', tell);
  return () => {
    clearInterval(every);
    document.removeEventListener('visibilitychange', tell);
  };
}

/** The organization's day by its clock, which runs on also without signal; YYYY-MM-DD. */
export function useToday(): string {
  const { organization } = useViewer();
  const { now, isSet } = useField().clock;
  return useSyncExternalStore(onTime, () =>
    isSet ? localTimeAt(now().getTime(), organization.timeZone).slice(0, 10) : organization.today,
  );
}
