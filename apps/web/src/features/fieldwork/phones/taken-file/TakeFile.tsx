import { useApolloClient } from '@apollo/client/react';
import { type ChangeEvent, useRef, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Button } from '../../../../ui/forms/Button.js';
import { ErrorState } from '../../../../ui/states/States.js';
import { postOf } from '../../device/post.js';
import { phonesDocument } from '../phones-document.js';
import { readUnsentFile } from './read-unsent-file.js';
import { sendFile, type SentFile } from './send-file.js';

type Came =
  | { readonly kind: 'nothing' | 'busy' | 'no file' }
  | { readonly kind: 'sent'; readonly sent: SentFile }
  | { readonly kind: 'broken'; readonly problem: unknown };

/** Takes in what a phone saved as a file because it could not send it. */
export function TakeFile() {
  const intl = useIntl();
  const client = useApolloClient();
  const input = useRef<HTMLInputElement>(null);
  const [came, setCame] = useState<Came>({ kind: 'nothing' });
  const take = async (event: ChangeEvent<HTMLInputElement>): Promise<void> => {
    const [chosen] = event.target.files ?? [];
    if (!chosen) return;
    setCame({ kind: 'busy' });
    try {
      const file = readUnsentFile(await chosen.text());
      setCame(file ? { kind: 'sent', sent: await sendFile(postOf(client, __APP_VERSION__), file) } : { kind: 'no file' });
      await client.refetchQueries({ include: [phonesDocument] });
    } catch (problem) {
      setCame({ kind: 'broken', problem });
    }
    // The same file may be chosen again.
    event.target.value = '';
  };
  return (
    <>
      <p className="soft so-far">
        <FormattedMessage id="phones.fileHow" />
      </p>
      <Button isBusy={came.kind === 'busy'} onClick={() => input.current?.click()}>
        <FormattedMessage id="phones.file" />
      </Button>
      <input
        ref={input}
        type="file"
        accept=".json,application/json"
        hidden
        aria-label={intl.formatMessage({ id: 'phones.file' })}
        onChange={(event) => void take(event)}
      />
      {came.kind === 'broken' && <ErrorState problem={came.problem} />}
      {came.kind === 'no file' && (
        <p className="problem" role="alert">
          <FormattedMessage id="phones.fileOther" />
        </p>
      )}
      {came.kind === 'sent' && <WhatCame sent={came.sent} />}
    </>
  );
}

function WhatCame({ sent: { isCut, ...counts } }: { readonly sent: SentFile }) {
  return (
    <p role="status">
      <FormattedMessage id="phones.fileTaken" values={counts} />{' '}
      {counts.photosLeft > 0 && !isCut && <FormattedMessage id="phones.filePhotosLeft" values={counts} />}{' '}
      {counts.drafts > 0 && <FormattedMessage id="phones.fileDrafts" values={counts} />} {isCut && <FormattedMessage id="phones.fileCut" />}
    </p>
  );
}
