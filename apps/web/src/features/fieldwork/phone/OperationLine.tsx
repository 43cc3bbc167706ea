import type { ReactNode } from 'react';
import { FormattedMessage } from 'react-intl';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import type { Operation } from '../../../offline/operation.js';
import { WhatWasTold } from './WhatWasTold.js';

interface Props {
  readonly operation: Operation;
  /** what can be done about it */
  readonly children?: ReactNode;
}

/** One thing that was saved: what, when, and what became of it. */
export function OperationLine({ operation, children }: Props) {
  const { moment } = useFormats();
  const { words, savedAt, sentAt, state, picture, setAside } = operation;
  return (
    <li>
      <b>{words}</b>
      <span className="line">
        {state === 'sent' && sentAt ? (
          <FormattedMessage id="field.phone.sentAt" values={{ when: moment(sentAt) }} />
        ) : (
          <FormattedMessage id="field.phone.savedAt" values={{ when: moment(savedAt) }} />
        )}
        {picture === 'here' && (
          <>
            {', '}
            <FormattedMessage id="field.phone.pictureWaits" />
          </>
        )}
      </span>
      <WhatWasTold operation={operation} />
      {setAside && (
        <span className="line">
          <FormattedMessage
            id={setAside.why ? 'field.refused.wasSetAside' : 'field.phone.seenAt'}
            values={{ when: moment(setAside.at), why: setAside.why }}
          />
        </span>
      )}
      {children}
    </li>
  );
}
