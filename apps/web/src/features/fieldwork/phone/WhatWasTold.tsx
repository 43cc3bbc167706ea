import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import type { Operation } from '../../../offline/operation.js';
import { problemSentence } from '../../../i18n/problems/problem-sentence.js';
import { messageOf } from '../../../says/saying.js';
import { fieldsOf, saidLines } from '../phones/said.js';
import { isOneSayer, otherSayer, sayerInWords } from '../phones/who-said.js';

type Fields = Readonly<Record<string, unknown>>;

/** What the server said of a thing: why not, in the reader's language, or what somebody else said of the same, with who it was. */
export function WhatWasTold({ operation: { kind, body, told } }: { readonly operation: Operation }) {
  const intl = useIntl();
  const formats = useFormats();
  if (!told) return null;
  const { verdict, problem } = told;
  const fields = (typeof told.other === 'object' && told.other !== null ? told.other : {}) as Fields;
  const other = otherSayer(fields);
  const isSelf = isOneSayer(fields);
  const by = isSelf ? '' : (other.by ?? intl.formatMessage({ id: 'phones.somebodyElse' }));
  const who = sayerInWords({ intl, formats }, { ...other, by }).trim();
  return (
    <>
      {(verdict === 'conflict' || verdict === 'parallel') && (
        <span className="line">
          <FormattedMessage id={`field.phone.${verdict}`} values={{ who, isSelf: String(isSelf) }} />
        </span>
      )}
      <OtherWord kind={kind} body={body} other={fields} />
      {problem && (
        <span className="line">{messageOf({ intl }, `field.refused.code.${problem.code}`) ?? problemSentence(intl.locale, problem)}</span>
      )}
    </>
  );
}

interface OtherProps {
  readonly kind: string;
  readonly body: string;
  readonly other: Fields;
}

function OtherWord({ kind, body, other }: OtherProps) {
  const intl = useIntl();
  const formats = useFormats();
  const isSelf = String(isOneSayer(other));
  const by = otherSayer(other).by ?? intl.formatMessage({ id: 'phones.somebodyElse' });
  return saidLines({ intl, formats }, kind, fieldsOf(body), other).map(({ field, label, sent, other: theirs }) => (
    <span key={field} className="line">
      <FormattedMessage id="field.phone.bothSaid" values={{ label, sent, by, other: theirs, isSelf }} />
    </span>
  ));
}
