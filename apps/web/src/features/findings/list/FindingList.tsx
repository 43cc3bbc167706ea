import { FormattedMessage, useIntl } from 'react-intl';
import type { FindingsQuery } from '../../../graphql/__generated__/graphql.js';
import { Kbd } from '../../../ui/tables/Kbd.js';
import { useListKeys } from '../../../ui/tables/use-list-keys.js';
import type { FindingsPlace } from '../urls.js';
import { FindingFilters } from './FindingFilters.js';
import { FindingLine } from './FindingLine.js';

interface Props {
  readonly findings: FindingsQuery['findings'] extends readonly (infer One)[] ? readonly One[] : never;
  readonly chosen: string | null;
  readonly place: FindingsPlace;
  readonly onChange: (place: Partial<FindingsPlace>) => void;
  readonly onChoose: (id: string) => void;
}

/** Where the reading begins when a finding is opened from the list. */
export const ARTICLE_ID = 'finding-article';

/** What was found, the dearest first. j and k choose as they move; Enter goes over to the evidence. */
export function FindingList({ findings, chosen, place, onChange, onChoose }: Props) {
  const intl = useIntl();
  const read = (): void => document.getElementById(ARTICLE_ID)?.focus();
  const { row, rowProps, go } = useListKeys({ count: findings.length, onOpen: read, start: findings.findIndex(({ id }) => id === chosen) });
  const state = place.state === 'in work' ? 'work' : place.state;
  return (
    <aside aria-label={intl.formatMessage({ id: 'findings.list' })}>
      <h2>{intl.formatMessage({ id: 'findings.count' }, { state, count: findings.length })}</h2>
      <p className="keys">
        <Kbd>j</Kbd> <FormattedMessage id="findings.keys.next" /> <Kbd>k</Kbd> <FormattedMessage id="findings.keys.back" /> <Kbd>?</Kbd>{' '}
        <FormattedMessage id="findings.keys.help" />
      </p>
      <FindingFilters place={place} onChange={onChange} />
      <ol className="work">
        {findings.map((finding, at) => (
          <FindingLine
            key={finding.id}
            finding={finding}
            isChosen={finding.id === chosen}
            place={place}
            keys={rowProps(at)}
            onOpen={read}
            onFocus={() => {
              if (row !== at) go(at);
              if (finding.id !== chosen) onChoose(finding.id);
            }}
          />
        ))}
      </ol>
    </aside>
  );
}
