import { type IntlShape, useIntl } from 'react-intl';
import type { PortfolioQuery } from '../../../graphql/__generated__/graphql.js';
import type { Formats } from '../../../i18n/formats.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { sentenceCase } from '../../../page/values/sentence-case.js';
import { isWholeMonth } from '../../../page/values/whole-month.js';
import { type Says, useSays } from '../../../says/use-says.js';
import { PageHead } from '../../../ui/frame/PageHead.js';

type Sums = PortfolioQuery['portfolio']['sums'];

interface Props {
  readonly portfolio: Pick<PortfolioQuery['portfolio'], 'month' | 'through' | 'sums'>;
  readonly isNarrowed: boolean;
}

/** The sentence that answers: how much more than needed, of what, and what cannot be said. */
export function PortfolioHead({ portfolio: { month, through, sums }, isNarrowed }: Props) {
  const intl = useIntl();
  const formats = useFormats();
  const says = useSays();
  const when = sentenceCase(
    intl.formatMessage(
      { id: 'overview.crumb' },
      { month: formats.month(month), through: through && !isWholeMonth(through) ? formats.dayInWords(through) : 'none' },
    ),
  );
  return (
    <PageHead
      crumb={isNarrowed ? `${when} · ${intl.formatMessage({ id: 'overview.crumb.narrowed' })}` : when}
      sentence={sentenceOf(intl, formats, says, sums)}
      lede={ledeOf(intl, says, sums)}
      tab={intl.formatMessage({ id: 'overview.tab' })}
    />
  );
}

function sentenceOf(intl: IntlShape, formats: Formats, says: Says, sums: Sums): string {
  const { properties, overProperties: over, notCounted, aboveNeedMoney } = sums;
  if (properties === 0) return intl.formatMessage({ id: 'overview.sentence.nothingFits' });
  if (notCounted === properties) return intl.formatMessage({ id: 'overview.sentence.unknown' }, { properties });
  if (over === 0) return intl.formatMessage({ id: 'overview.sentence.none' });
  const money = aboveNeedMoney === null || aboveNeedMoney === undefined ? 'none' : formats.money(aboveNeedMoney);
  return intl.formatMessage({ id: 'overview.sentence.over' }, { over, properties, litres: says.volume(sums.aboveNeedLitres), money });
}

function ledeOf(intl: IntlShape, says: Says, sums: Sums): string {
  const { overProperties, underProperties, notCounted, properties, aboveNeedMoney } = sums;
  const parts = [
    overProperties > 0 && sharesOf(intl, says, sums),
    overProperties > 0 && typeof aboveNeedMoney !== 'number' && intl.formatMessage({ id: 'overview.lede.noPrice' }),
    underProperties > 0 && intl.formatMessage({ id: 'overview.lede.under' }, { count: underProperties }),
    notCounted > 0 && notCounted < properties && intl.formatMessage({ id: 'overview.lede.notCounted' }, { count: notCounted }),
  ];
  return parts.filter(Boolean).join(' ');
}

/** How much of it is settings, how much is unexplained and how much nobody can split; a share below zero explains nothing and is left out. */
function sharesOf(intl: IntlShape, says: Says, { settingsLitres, unexplainedLitres, unsplitLitres }: Sums): string {
  const shares = [
    { id: 'overview.lede.settings', litres: settingsLitres },
    { id: 'overview.lede.unexplained', litres: unexplainedLitres },
    { id: 'overview.lede.unsplit', litres: unsplitLitres },
  ] as const;
  const said = shares
    .filter(({ litres }) => litres > 0)
    .map(({ id, litres }) => intl.formatMessage({ id }, { litres: says.volume(litres) }));
  return said.length === 0 ? '' : `${said.join('; ')}.`;
}
