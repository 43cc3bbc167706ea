import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useSays } from '../../../../says/use-says.js';
import { sumOf } from '../ask-year.js';
import type { Levels } from '../sliders/levels.js';
import { useChangeWords } from './use-change-words.js';
import { YearBars } from './YearBars.js';

interface Props {
  /** Null for all zones together. */
  readonly name: string | null;
  readonly months: readonly string[];
  readonly levels: Levels;
  /** [L] */
  readonly now: readonly (number | null)[];
  readonly then: readonly (number | null)[];
  readonly pricePerLitre: number | null;
  readonly assumed: readonly string[];
}

/** The answer as a sentence, then its numbers, then month by month; what it stands on. */
export function Answer({ name, months, levels, now, then, pricePerLitre, assumed }: Props) {
  const { volume, word } = useSays();
  const { month } = useFormats();
  const intl = useIntl();
  const [needed, wouldNeed] = [sumOf(now), sumOf(then)];
  const inputs = intl.formatList(
    assumed.map((input) => word('assumed', input)),
    { type: 'conjunction' },
  );
  return (
    <div className="what-if-answer">
      <output className="lede line">
        <Sentence name={name} levels={levels} needed={needed} wouldNeed={wouldNeed} pricePerLitre={pricePerLitre} />
      </output>
      <p>
        <FormattedMessage
          id="whatIf.numbers"
          values={{
            now: volume(needed),
            then: volume(wouldNeed),
            from: month(months[0]),
            until: month(months.at(-1)),
          }}
        />
      </p>
      <YearBars months={months} now={now} then={then} />
      <ul className="notes xs soft">
        <li>
          <FormattedMessage id="whatIf.estimate" />
        </li>
        {assumed.length > 0 && (
          <li>
            <FormattedMessage id="whatIf.assumed" values={{ inputs }} />
          </li>
        )}
        <li>
          <FormattedMessage id={pricePerLitre === null ? 'whatIf.noPrice' : 'whatIf.price'} />
        </li>
      </ul>
    </div>
  );
}

interface SentenceProps extends Pick<Props, 'name' | 'levels' | 'pricePerLitre'> {
  readonly needed: number | null;
  readonly wouldNeed: number | null;
}

/** 'With a uniformity of 90%, Pool lawn would need 41,000 gal less a year, about $170.' */
function Sentence({ name, levels, needed, wouldNeed, pricePerLitre }: SentenceProps) {
  const { volume } = useSays();
  const { money } = useFormats();
  const changes = useChangeWords(levels, name !== null);
  const zone = { which: name === null ? 'all' : 'one', zone: name ?? '' };
  const less = needed === null || wouldNeed === null ? 0 : needed - wouldNeed;
  if (changes === null) return <FormattedMessage id="whatIf.asItIs" values={{ ...zone, litres: volume(needed) }} />;
  if (less === 0) return <FormattedMessage id="whatIf.same" values={{ ...zone, changes }} />;
  const size = Math.abs(less);
  return (
    <FormattedMessage
      id={less > 0 ? 'whatIf.less' : 'whatIf.more'}
      values={{ ...zone, changes, litres: volume(size), money: pricePerLitre === null ? 'none' : money(size * pricePerLitre) }}
    />
  );
}
