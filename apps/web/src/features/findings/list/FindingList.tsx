import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import type { FindingsQuery } from '../../../graphql/__generated__/graphql.js';
import { Button } from '../../../ui/forms/Button.js';
import { Kbd } from '../../../ui/tables/Kbd.js';
import { useListKeys } from '../../../ui/tables/use-list-keys.js';
import type { FindingsPlace } from '../urls.js';
import { FindingFilters } from './FindingFilters.js';
import { FindingLine } from './FindingLine.js';
import { firstOf, type inGroups } from './in-groups.js';

type One = FindingsQuery['findings'][number];

interface Props {
  readonly groups: ReturnType<typeof inGroups<One>>;
  readonly chosen: string | null;
  readonly place: FindingsPlace;
  readonly onChange: (place: Partial<FindingsPlace>) => void;
  readonly onChoose: (id: string) => void;
}

/** Where the reading begins when a finding is opened from the list. */
export const ARTICLE_ID = 'finding-article';

/** So many are looked at in one go; more are asked for. */
const PAGE = 50;

/** What was found, by what is to be done first. j and k choose as they move; Enter goes over to the evidence. */
export function FindingList({ groups, chosen, place, onChange, onChoose }: Props) {
  const intl = useIntl();
  const [asked, setAsked] = useState(PAGE);
  const findings = groups.flatMap((group) => group.findings);
  const start = findings.findIndex(({ id }) => id === chosen);
  // The chosen one is always there, and the one after it, so that the keys go on.
  const shown = Math.min(findings.length, Math.max(asked, PAGE * Math.ceil((start + 2) / PAGE)));
  const read = (): void => document.getElementById(ARTICLE_ID)?.focus();
  const { row, rowProps, go } = useListKeys({ count: shown, onOpen: read, start });
  const state = place.state === 'in work' ? 'work' : place.state;
  return (
    <aside aria-label={intl.formatMessage({ id: 'findings.list' })}>
      <p className="in-list">{intl.formatMessage({ id: 'findings.count' }, { state, count: findings.length })}</p>
      <p className="keys">
        <Kbd>j</Kbd> <FormattedMessage id="findings.keys.next" /> <Kbd>k</Kbd> <FormattedMessage id="findings.keys.back" /> <Kbd>?</Kbd>{' '}
        <FormattedMessage id="findings.keys.help" />
      </p>
      <FindingFilters place={place} onChange={onChange} />
      {firstOf(groups, shown).map(({ group, from, findings: own }) => (
        <div key={group}>
          {(groups.length > 1 || group === 'seldom') && (
            <p className="group" aria-hidden="true">
              <FormattedMessage id={`findings.group.${group}`} />
            </p>
          )}
          <ol className="work" aria-label={intl.formatMessage({ id: `findings.group.${group}` })}>
            {own.map((finding, at) => (
              <FindingLine
                key={finding.id}
                finding={finding}
                isChosen={finding.id === chosen}
                place={place}
                keys={rowProps(from + at)}
                onOpen={read}
                onFocus={() => {
                  if (row !== from + at) go(from + at);
                  if (finding.id !== chosen) onChoose(finding.id);
                }}
              />
            ))}
          </ol>
        </div>
      ))}
      {shown < findings.length && (
        <Button kind="plain" onClick={() => setAsked(shown + PAGE)}>
          {intl.formatMessage({ id: 'findings.more' }, { count: Math.min(PAGE, findings.length - shown), all: findings.length })}
        </Button>
      )}
    </aside>
  );
}
