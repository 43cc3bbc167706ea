import { FormattedMessage } from 'react-intl';
import type { FindingOfArticleFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useSays } from '../../../says/use-says.js';

type Past = Pick<
  FindingOfArticleFragment,
  'history' | 'isSilenced' | 'acknowledgedAt' | 'acknowledgedBy' | 'acknowledgedNote' | 'acknowledgedUntil' | 'clearedAt' | 'state'
>;

/** What the finding was before it was known better, and who lets it wait. */
export function FindingPast({ finding }: { readonly finding: Past }) {
  const { moment, dayInWords } = useFormats();
  const { word } = useSays();
  const { history, isSilenced, acknowledgedBy, acknowledgedNote, acknowledgedUntil } = finding;
  return (
    <>
      {history.map(({ kind, at }) => (
        <p key={`${kind} ${at}`} className="soft">
          <FormattedMessage id="findings.was" values={{ kind: word('kind', kind), day: moment(at) }} />
        </p>
      ))}
      {isSilenced && (
        <p className="decided">
          <FormattedMessage
            id="findings.waits"
            values={{
              by: acknowledgedBy ?? 'none',
              day: acknowledgedUntil ? dayInWords(acknowledgedUntil) : 'none',
              note: acknowledgedNote ?? '',
            }}
          />
        </p>
      )}
    </>
  );
}
