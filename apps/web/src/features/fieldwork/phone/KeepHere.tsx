import { useEffect, useState } from 'react';
import { FormattedMessage } from 'react-intl';
import { askToKeep } from '../../../offline/room.js';

const isInstalled = (): boolean => window.matchMedia?.('(display-mode: standalone)').matches ?? false;

/** Whether the browser may clear what is here, and what helps: Rillbook on the home screen. */
export function KeepHere() {
  const [isKept, setKept] = useState<boolean | null>(null);
  useEffect(() => {
    let isGone = false;
    void askToKeep().then((kept) => {
      if (!isGone) setKept(kept);
    });
    return () => {
      isGone = true;
    };
  }, []);
  return (
    <>
      {isKept === false && (
        <p className="problem" role="status">
          <FormattedMessage id="field.phone.mayBeCleared" />
        </p>
      )}
      {!isInstalled() && (
        <p className="where">
          <FormattedMessage id="field.phone.install" />
        </p>
      )}
    </>
  );
}
