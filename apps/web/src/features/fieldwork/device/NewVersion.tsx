import { useEffect, useSyncExternalStore } from 'react';
import { FormattedMessage } from 'react-intl';
import { isWriting } from '../../../offline/outbox.js';
import { useOutbox } from '../../../offline/PhoneProvider.js';
import { isNewVersionReady, onNewVersion, takeNewVersion } from '../../../session/new-version.js';

import { useField } from './FieldPhone.js';

interface Props {
  /** Whether this page is one where nothing is written: there a newer version may take over. */
  readonly isBetween: boolean;
}

/** A newer version waits until the visit is finished and nothing is half written; then it takes over by itself. */
export function NewVersion({ isBetween }: Props) {
  const isReady = useSyncExternalStore(onNewVersion, isNewVersionReady);
  const outbox = useOutbox();
  const { now } = useField().clock;
  // The newer version fetches the day anew: without signal there would be none.
  const takesOver = isReady && isBetween && !isWriting(outbox, now()) && navigator.onLine;
  useEffect(() => {
    if (takesOver) takeNewVersion();
  }, [takesOver]);
  return isReady ? (
    <>
      {' '}
      <FormattedMessage id="field.phone.newVersion" />
    </>
  ) : null;
}
