import { FormattedMessage } from 'react-intl';
import type { FindingOfArticleFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useSays } from '../../../says/use-says.js';

interface Props {
  readonly finding: Pick<
    FindingOfArticleFragment,
    'history' | 'isSilenced' | 'acknowledgedAt' | 'acknowledgedBy' | 'acknowledgedNote' | 'acknowledgedUntil' | 'clearedAt' | 'state'
  >;
}

/** What the finding was before it was known better, whether it is still seen, and who lets it wait or did. */
export function FindingPast({ finding }: Props) {
  const { moment } = useFormats();
  const { word } = useSays();
  return (
    <>
      {finding.history.map(({ kind, at }) => (
        <p key={`${kind} ${at}`} className="soft">
          <FormattedMessage id="findings.was" values={{ kind: word('kind', kind), day: moment(at) }} />
        </p>
      ))}
      {isUndecided(finding) && <NoLongerSeen finding={finding} />}
      <Waiting finding={finding} />
    </>
  );
}

const isUndecided = ({ state }: Props['finding']): boolean => state === 'open' || state === 'in work';

function NoLongerSeen({ finding: { state, clearedAt } }: Props) {
  const { moment } = useFormats();
  return clearedAt ? (
    <p className="decided">
      <FormattedMessage id="findings.noLonger" values={{ state: state === 'open' ? 'open' : 'work', day: moment(clearedAt) }} />
    </p>
  ) : null;
}

function Waiting({ finding }: Props) {
  const { dayInWords } = useFormats();
  const { isSilenced, acknowledgedBy, acknowledgedNote, acknowledgedUntil } = finding;
  const hasWaited = acknowledgedUntil && isUndecided(finding);
  if (!isSilenced && !hasWaited) return null;
  const values = {
    by: acknowledgedBy ?? 'none',
    day: acknowledgedUntil ? dayInWords(acknowledgedUntil) : 'none',
    note: acknowledgedNote ?? '',
  };
  return (
    <p className="decided">
      <FormattedMessage id={isSilenced ? 'findings.waits' : 'findings.waited'} values={values} />
    </p>
  );
}
