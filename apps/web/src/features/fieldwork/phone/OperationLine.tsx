import { FormattedMessage } from 'react-intl';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import type { Operation, Verdict } from '../../../offline/operation.js';
import { Button } from '../../../ui/forms/Button.js';

interface Props {
  readonly operation: Operation;
  readonly onAgain: (() => void) | null;
}

/** One thing that was saved: what, when, and what became of it. */
export function OperationLine({ operation: { words, savedAt, sentAt, state, told, picture }, onAgain }: Props) {
  const { moment } = useFormats();
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
      {told && <WhatWasTold told={told} />}
      {onAgain && (
        <p className="after">
          <Button onClick={onAgain}>
            <FormattedMessage id="field.phone.again" />
          </Button>
        </p>
      )}
    </li>
  );
}

function WhatWasTold({ told: { verdict, problem } }: { readonly told: Verdict }) {
  return (
    <>
      {verdict === 'conflict' && (
        <span className="line">
          <FormattedMessage id="field.phone.conflict" />
        </span>
      )}
      {verdict === 'parallel' && (
        <span className="line">
          <FormattedMessage id="field.phone.parallel" />
        </span>
      )}
      {problem && <span className="line">{problem.message}</span>}
    </>
  );
}
