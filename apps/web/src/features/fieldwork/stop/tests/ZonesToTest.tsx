import { FormattedMessage } from 'react-intl';
import { Link } from 'react-router';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useOutbox } from '../../../../offline/PhoneProvider.js';
import { useSays } from '../../../../says/use-says.js';
import { stopPath } from '../../urls.js';
import { labelOf } from '../zones/zones-in-order.js';
import type { GivenTest, TestedZone } from './zone-test.js';
import { subjectOf } from './zone-test.js';

interface Props {
  readonly zones: readonly TestedZone[];
  readonly tests: readonly GivenTest[];
  readonly stopId: string;
}

/** The zones, with what is on record of each and whether it was tested here. */
export function ZonesToTest({ zones, tests, stopId }: Props) {
  const { operations } = useOutbox();
  const isTested = (zoneId: string): boolean =>
    tests.some((test) => test.zoneId === zoneId) ||
    (['flow', 'catch'] as const).some((kind) => operations.some(({ subject }) => subject === subjectOf(kind, stopId, zoneId)));
  return (
    <ol className="day-stops">
      {zones.map((zone) => (
        <li key={zone.id}>
          <Link to={stopPath(stopId, 'tests', zone.id)}>
            <span className="n" aria-hidden="true">
              {typeof zone.station === 'number' ? labelOf(zone) : ''}
            </span>
            <span>
              <b>{zone.name}</b>
              <span className="line">
                <OnRecord zone={zone} />
              </span>
              {isTested(zone.id) && (
                <span className="line state-line">
                  <FormattedMessage id="field.tests.tested" />
                </span>
              )}
            </span>
          </Link>
        </li>
      ))}
    </ol>
  );
}

/** The flow and the evenness that stand on a zone's record, each with where it is known from. */
export function OnRecord({ zone: { flowLPerMin, flowSource, duLq } }: { readonly zone: TestedZone }) {
  const { quantity, percent } = useFormats();
  const { word } = useSays();
  return (
    <FormattedMessage
      id="field.tests.record"
      values={{
        flow: typeof flowLPerMin === 'number' ? quantity('flow', flowLPerMin) : 'none',
        source: flowSource ? word('field.flowSource', flowSource) : 'none',
        evenness: typeof duLq === 'number' ? percent(duLq) : 'none',
      }}
    />
  );
}
