import { FormattedMessage } from 'react-intl';
import type { FindingOfArticleFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useSays } from '../../../says/use-says.js';
import { isFromRecords } from '../list/water-of-kind.js';
import type { Evidence } from './read-evidence.js';

interface Props {
  readonly finding: Pick<FindingOfArticleFragment, 'kind' | 'confidence'>;
  readonly evidence: Evidence;
}

/** What the finding means, and how sure it is. */
export function WhyWeThinkSo({ finding: { kind, confidence }, evidence: { habit, sdLitres } }: Props) {
  const formats = useFormats();
  const { word, volume } = useSays();
  return (
    <div>
      <h3>
        <FormattedMessage id="findings.why" />
      </h3>
      <ul>
        <li>{word('means', kind)}</li>
        {habit && (
          <li>
            <FormattedMessage id="findings.why.habit" values={{ months: habit.months, mean: formats.percent(habit.mean) }} />
          </li>
        )}
        {sdLitres !== null && (
          <li>
            <FormattedMessage id="findings.why.spread" values={{ sd: volume(sdLitres) }} />
          </li>
        )}
        {typeof confidence === 'number' && (
          <li>
            {confidence === 1 && isFromRecords(kind) ? (
              <FormattedMessage id="findings.why.certain" />
            ) : (
              <FormattedMessage id="findings.why.confidence" values={{ confidence: formats.figure(Math.min(0.99, confidence), 2) }} />
            )}
          </li>
        )}
      </ul>
    </div>
  );
}
