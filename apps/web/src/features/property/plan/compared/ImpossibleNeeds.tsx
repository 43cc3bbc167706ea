import { FormattedMessage } from 'react-intl';
import type { Names } from '../../../../says/names.js';
import { useSays } from '../../../../says/use-says.js';
import type { Plan } from '../plan-document.js';

interface Props {
  readonly needs: Plan['impossible'];
  readonly names: Names;
}

/** Needs that no program meets: which zone, by how much, why, and what would free it. */
export function ImpossibleNeeds({ needs, names }: Props) {
  const { word, volume } = useSays(names);
  if (needs.length === 0) return null;
  return (
    <div className="planned">
      <h3>
        <FormattedMessage id="plan.impossible" values={{ count: needs.length }} />
      </h3>
      <ul className="notes">
        {needs.map(({ zoneId, station, unmetLitres, because, freedBy }) => (
          <li key={zoneId}>
            <FormattedMessage
              id="plan.impossible.zone"
              values={{
                zone: [station, names.of(zoneId)].filter(Boolean).join(' '),
                litres: volume(unmetLitres),
                because: word('plan.because', because),
                freedBy: word('plan.freedBy', freedBy),
              }}
            />
          </li>
        ))}
      </ul>
    </div>
  );
}
