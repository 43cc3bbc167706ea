import { useIntl } from 'react-intl';
import type { FindingOfArticleFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { AccountGauge } from '../../../page/drawing/AccountGauge.js';
import { YearOfGauges } from '../../../page/drawing/YearOfGauges.js';
import type { Names } from '../../../says/names.js';

interface Props {
  readonly accounts: FindingOfArticleFragment['property']['accounts'];
  readonly month: string | null;
  readonly names: Names;
  readonly hrefOf: (month: string) => string;
}

/** As many as stand beside the list without scrolling. */
const MONTHS_SHOWN = 9;

/** The gauge of the month in which it was seen, and the months that led to it. */
export function AccountEvidence({ accounts, month, names, hrefOf }: Props) {
  const intl = useIntl();
  const formats = useFormats();
  const own = accounts.find((account) => account.month === month) ?? accounts.at(-1);
  if (!own) return <p className="soft part-note">{intl.formatMessage({ id: 'findings.account.none' })}</p>;
  return (
    <>
      <h2 className="small">{intl.formatMessage({ id: 'findings.account' }, { month: formats.month(own.month) })}</h2>
      <AccountGauge account={own} size="fit" names={names} />
      {accounts.length > 1 && (
        <>
          <h2 className="small">{intl.formatMessage({ id: 'findings.months' })}</h2>
          <YearOfGauges accounts={accounts.slice(-MONTHS_SHOWN)} chosen={own.month} names={names} hrefOf={hrefOf} />
        </>
      )}
    </>
  );
}
