import { useEffect, useSyncExternalStore } from 'react';
import { FormattedMessage } from 'react-intl';
import { useOutbox } from '../../../offline/PhoneProvider.js';
import { isNewVersionReady, onNewVersion, takeNewVersion } from '../../../page/new-version.js';

interface Props {
  /** Whether this page is one where nothing is written: there a newer version may take over. */
  readonly isBetween: boolean;
}

/** A newer version waits until the visit is finished and nothing is half written; then it takes over by itself. */
export function NewVersion({ isBetween }: Props) {
  const isReady = useSyncExternalStore(onNewVersion, isNewVersionReady);
  const { drafts } = useOutbox();
  const isClean = Object.keys(drafts).length === 0;
  const takesOver = isReady && isBetween && isClean;
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
