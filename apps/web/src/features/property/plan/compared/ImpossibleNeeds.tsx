import { FormattedMessage, useIntl } from 'react-intl';
import type { Names } from '../../../../says/names.js';
import { useSays } from '../../../../says/use-says.js';
import type { Plan } from '../plan-document.js';

type Need = Plan['impossible'][number];

interface Props {
  readonly needs: Plan['impossible'];
  readonly names: Names;
}

/** Needs that no program meets: which zone, by how much, why, and what would free it; zones of one cause in one sentence. */
export function ImpossibleNeeds({ needs, names }: Props) {
  const { word, volume } = useSays(names);
  const intl = useIntl();
  if (needs.length === 0) return null;
  const zoneOf = ({ zoneId, station }: Need): string => [station, names.of(zoneId)].filter(Boolean).join(' ');
  return (
    <div className="planned">
      <h3>
        <FormattedMessage id="plan.impossible" values={{ count: needs.length }} />
      </h3>
      <ul className="notes">
        {alike(needs).map(([first, ...others]) => (
          <li key={first.zoneId}>
            <FormattedMessage
              id={others.length === 0 ? 'plan.impossible.zone' : 'plan.impossible.zones'}
              values={{
                zone: zoneOf(first),
                litres: volume(first.unmetLitres),
                because: word('plan.because', first.because),
                freedBy: word('plan.freedBy', first.freedBy),
                zones: intl.formatList(
                  [first, ...others].map((need) =>
                    intl.formatMessage({ id: 'plan.impossible.lacks' }, { zone: zoneOf(need), litres: volume(need.unmetLitres) }),
                  ),
                  { type: 'conjunction' },
                ),
              }}
            />
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Those of one cause together, in the order in which the first of each stands. */
function alike(needs: readonly Need[]): readonly (readonly [Need, ...Need[]])[] {
  const causes = new Map<string, [Need, ...Need[]]>();
  for (const need of needs) {
    const cause = JSON.stringify([need.because, need.freedBy]);
    const found = causes.get(cause);
    if (found) found.push(need);
    else causes.set(cause, [need]);
  }
  return [...causes.values()];
}
