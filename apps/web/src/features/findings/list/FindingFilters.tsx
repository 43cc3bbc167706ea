import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import type { MessageId } from '../../../i18n/catalogue.js';
import { words } from '../../../i18n/messages/en/office/words.js';
import { paths } from '../../../page/paths.js';
import { sentenceCase } from '../../../page/values/sentence-case.js';
import { useSays } from '../../../says/use-says.js';
import { Select } from '../../../ui/forms/Select.js';
import { type FindingState, type FindingsPlace, STATES } from '../urls.js';

const STATE_WORDS: Readonly<Record<FindingState, MessageId>> = {
  open: 'findings.state.open',
  waiting: 'findings.state.waiting',
  'in work': 'findings.state.work',
  resolved: 'findings.state.resolved',
  dismissed: 'findings.state.dismissed',
};
/** Every kind there are words for. */
const KINDS = Object.keys(words).flatMap((id) => (id.startsWith('kind.') ? [id.slice('kind.'.length)] : []));
const EVERY = '';

interface Props {
  readonly place: FindingsPlace;
  readonly onChange: (place: Partial<FindingsPlace>) => void;
}

/** Which findings are in the list. */
export function FindingFilters({ place, onChange }: Props) {
  const intl = useIntl();
  const { word } = useSays();
  const kinds = [
    { value: EVERY, words: intl.formatMessage({ id: 'findings.kind.every' }) },
    ...KINDS.map((kind) => ({ value: kind, words: sentenceCase(word('kind', kind)) })),
  ];
  return (
    <div className="find-filters">
      <Select
        label={intl.formatMessage({ id: 'findings.state' })}
        value={place.state}
        choices={STATES.map((state) => ({ value: state, words: intl.formatMessage({ id: STATE_WORDS[state] }) }))}
        onChange={(state) => onChange({ state })}
      />
      <Select
        label={intl.formatMessage({ id: 'findings.kind' })}
        value={place.kind ?? EVERY}
        choices={kinds}
        onChange={(kind) => onChange({ kind: kind || null })}
      />
      <Link className="xs" to={paths.findingsWeek}>
        <FormattedMessage id="week.link" />
      </Link>
      <Link className="xs" to={paths.findingPrecision}>
        <FormattedMessage id="precision.link" />
      </Link>
    </div>
  );
}
