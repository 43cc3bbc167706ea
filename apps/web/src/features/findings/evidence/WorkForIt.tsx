import { FormattedMessage } from 'react-intl';
import type { FindingOfArticleFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { sentenceCase } from '../../../page/values/sentence-case.js';
import { useSays } from '../../../says/use-says.js';

/** The work orders that answer the finding, with crew and day. */
export function WorkForIt({ orders }: { readonly orders: FindingOfArticleFragment['workOrders'] }) {
  const formats = useFormats();
  const { word } = useSays();
  if (orders.length === 0) return null;
  return (
    <>
      <h2 className="small">
        <FormattedMessage id="findings.work" />
      </h2>
      <ul className="plain-list">
        {orders.map(({ id, kind, state, what, day, crew }) => (
          <li key={id}>
            <FormattedMessage id="findings.work.line" values={{ work: <b key="work">{sentenceCase(word('work', kind))}</b>, what }} />{' '}
            <span className="soft xs">
              {state === 'done' || state === 'dropped' || state === 'waiting for approval' ? (
                word('workState', state)
              ) : crew && day ? (
                <FormattedMessage id="findings.work.on" values={{ crew: crew.name, day: formats.day(day) }} />
              ) : (
                <FormattedMessage id="findings.work.noDay" />
              )}
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}
