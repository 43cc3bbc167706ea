import { useApolloClient } from '@apollo/client/react';
import { useEffect, useSyncExternalStore } from 'react';
import { FormattedMessage } from 'react-intl';
import { isWriting } from '../../../offline/outbox.js';
import { useOutbox } from '../../../offline/PhoneProvider.js';
import { isNewVersionReady, onNewVersion, takeNewVersion } from '../../../session/new-version.js';
import { ask } from './ask.js';
import { useField } from './FieldPhone.js';
import { clockDocument } from './use-clock.js';

interface Props {
  /** Whether this page is one where nothing is written: there a newer version may take over. */
  readonly isBetween: boolean;
}

/** A server that takes longer for a small question would not bring a day. */
const ANSWER_MS = 10_000;
const EVERY_MS = 60_000;

/** A newer version waits until the visit is finished and nothing is half written; then it takes over by itself. */
export function NewVersion({ isBetween }: Props) {
  const isReady = useSyncExternalStore(onNewVersion, isNewVersionReady);
  const client = useApolloClient();
  const outbox = useOutbox();
  const { now } = useField().clock;
  const mayTakeOver = isReady && isBetween && !isWriting(outbox, now());
  useEffect(() => {
    if (!mayTakeOver) return;
    let isGone = false;
    // The newer version fetches the day anew: where nobody answers there would be none, whatever the phone thinks of its line.
    const look = (): void =>
      void ask(client, clockDocument, {}, ANSWER_MS).then(
        () => {
          if (!isGone) takeNewVersion();
        },
        () => undefined,
      );
    look();
    const every = setInterval(look, EVERY_MS);
    return () => {
      isGone = true;
      clearInterval(every);
    };
  }, [mayTakeOver, client]);
  return isReady ? (
    <>
      {' '}
      <FormattedMessage id="field.phone.newVersion" />
    </>
  ) : null;
}
