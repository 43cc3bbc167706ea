import { FormattedMessage } from 'react-intl';
import { Link } from 'react-router';
import type { VolumeColumn } from '../../../i18n/formats.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { AccountGauge } from '../../../page/drawing/AccountGauge.js';
import { paths } from '../../../page/paths.js';
import { roundVolume } from '../../../says/round-volume.js';
import { useSays } from '../../../says/use-says.js';
import type { RowProps } from '../../../ui/tables/use-list-keys.js';
import type { PortfolioRow } from './portfolio-groups.js';
import { groupOf } from './portfolio-groups.js';
import { WhoIsOnIt } from './WhoIsOnIt.js';

interface Props {
  readonly row: PortfolioRow;
  /** The place in the list; none outside of those above need. */
  readonly rank: number | null;
  readonly column: VolumeColumn;
  readonly month: string;
  readonly keys: RowProps;
}

/** One property: why it stands here in words, its gauge, gallons and money above need, and who is on it. */
export function RankedRow({ row, rank, column, month, keys }: Props) {
  const { reason } = useSays();
  const { property, account, why } = row;
  const allowed = account?.allowed.litres ?? null;
  return (
    <tr {...keys}>
      <td className="n num">{rank ?? <RowSign row={row} />}</td>
      <td className="what">
        <Link to={paths.property(property.id, month)}>{property.name}</Link> <span className="soft xs">{property.client.name}</span>
        <p>{reason(why)}</p>
      </td>
      <td className={allowed === null ? 'g unscaled' : 'g'}>
        {account && <AccountGauge account={account} size="row" {...(allowed ? { scaleTopLitres: 2 * allowed } : {})} />}
      </td>
      <LitresCell row={row} column={column} />
      <MoneyCell row={row} />
      <td className="who">
        <WhoIsOnIt row={row} />
      </td>
    </tr>
  );
}

/** The map's shape for too little; a dash for what cannot be counted. */
function RowSign({ row }: { readonly row: PortfolioRow }) {
  const group = groupOf(row);
  return <span aria-hidden="true">{group === 'under' ? '▽' : group === 'near' ? '○' : '–'}</span>;
}

function LitresCell({ row: { account }, column }: Pick<Props, 'row' | 'column'>) {
  const { number } = useFormats();
  const litres = account?.aboveNeed.litres ?? null;
  if (litres === null)
    return (
      <td className="num gal soft">
        <FormattedMessage id="overview.notKnown" />
      </td>
    );
  const isEstimated = (account?.metered.estimatedShare ?? 0) > 0 || (account?.needed.estimatedShare ?? 0) > 0;
  return (
    <td className="num gal">
      {number(roundVolume(column.fromLitres(litres)), column.decimals)}
      <span className="folded"> {column.unit}</span>
      {isEstimated && (
        <span className="estimated">
          <FormattedMessage id="overview.estimated" />
        </span>
      )}
    </td>
  );
}

/** Water that did not run cost nothing: money stands only above need. */
function MoneyCell({ row }: Pick<Props, 'row'>) {
  const { money } = useFormats();
  const amount = row.account?.aboveNeed.money ?? null;
  if (groupOf(row) !== 'over') return <td className="num usd" />;
  return (
    <td className="num usd">
      {amount === null ? (
        <span className="soft">
          <FormattedMessage id="overview.notKnown" />
        </span>
      ) : (
        <b>{money(amount)}</b>
      )}
    </td>
  );
}
