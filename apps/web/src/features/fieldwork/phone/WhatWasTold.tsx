import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import type { Operation } from '../../../offline/operation.js';
import { problemSentence } from '../../../i18n/problems/problem-sentence.js';
import { messageOf } from '../../../says/saying.js';
import { fieldsOf, saidLines } from '../phones/said.js';

/** What the server said of a thing: why not, in the reader's language, or what somebody else said of the same, with who it was. */
export function WhatWasTold({ operation: { kind, body, told } }: { readonly operation: Operation }) {
  const intl = useIntl();
  if (!told) return null;
  const { verdict, problem } = told;
  return (
    <>
      {(verdict === 'conflict' || verdict === 'parallel') && (
        <span className="line">
          <FormattedMessage id={`field.phone.${verdict}`} />
        </span>
      )}
      <OtherWord kind={kind} body={body} other={told.other} />
      {problem && (
        <span className="line">{messageOf({ intl }, `field.refused.code.${problem.code}`) ?? problemSentence(intl.locale, problem)}</span>
      )}
    </>
  );
}

interface OtherProps {
  readonly kind: string;
  readonly body: string;
  readonly other: unknown;
}

function OtherWord({ kind, body, other }: OtherProps) {
  const intl = useIntl();
  const formats = useFormats();
  if (typeof other !== 'object' || other === null) return null;
  const fields = other as Readonly<Record<string, unknown>>;
  const by = typeof fields['by'] === 'string' ? fields['by'] : intl.formatMessage({ id: 'phones.somebodyElse' });
  return saidLines({ intl, formats }, kind, fieldsOf(body), fields).map(({ field, label, sent, other: theirs }) => (
    <span key={field} className="line">
      <FormattedMessage id="field.phone.bothSaid" values={{ label, sent, by, other: theirs }} />
    </span>
  ));
}
