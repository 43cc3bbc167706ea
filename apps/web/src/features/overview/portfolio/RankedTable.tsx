import { type ReactNode, useMemo } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { useNavigate } from 'react-router';
import type { PortfolioQuery, PortfolioSort } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { paths } from '../../../page/paths.js';
import { KeyHints } from '../../../ui/tables/Kbd.js';
import { SortHead, Table } from '../../../ui/tables/Table.js';
import { useListKeys } from '../../../ui/tables/use-list-keys.js';
import { groupedRows, type PortfolioRow } from './portfolio-groups.js';
import { RankedRow } from './RankedRow.js';
import type { PortfolioPlace } from './urls.js';

interface Props {
  readonly portfolio: PortfolioQuery['portfolio'];
  readonly place: PortfolioPlace;
  readonly onChange: (change: Partial<PortfolioPlace>) => void;
}

/** The ranked list: those above need first, then those with too little, then those that cannot be counted. */
export function RankedTable({ portfolio: { rows, total, next, month }, place, onChange }: Props) {
  const intl = useIntl();
  const navigate = useNavigate();
  const { over, under, unknown, near } = useMemo(() => groupedRows(rows), [rows]);
  const { volumeColumn } = useFormats();
  const column = volumeColumn(Math.max(0, ...rows.map(({ account }) => Math.abs(account?.aboveNeed.litres ?? 0))));
  const inOrder = [...over, ...under, ...unknown, ...(place.near ? near : [])];
  const { rowProps } = useListKeys({
    count: inOrder.length,
    onOpen: (at) => {
      const row = inOrder[at];
      if (row) void navigate(paths.property(row.property.id, month));
    },
  });
  const drawn = (row: PortfolioRow, rank: number | null) => (
    <RankedRow key={row.property.id} row={row} rank={rank} column={column} month={month} keys={rowProps(inOrder.indexOf(row))} />
  );
  return (
    <>
      <Table
        name={intl.formatMessage({ id: 'overview.table' })}
        look="rank"
        head={<RankedHead sort={place.sort} unit={column.unit} onSort={(sort) => onChange({ sort })} />}
      >
        {over.map((row, at) => drawn(row, at + 1))}
        <RowGroup id="overview.group.under" rows={under.map((row) => drawn(row, null))} />
        <RowGroup id="overview.group.unknown" rows={unknown.map((row) => drawn(row, null))} />
        <RowGroup id="overview.group.near" rows={place.near ? near.map((row) => drawn(row, null)) : []} />
      </Table>
      {near.length > 0 && (
        <p className="soft after-list">
          {!place.near && <FormattedMessage id="overview.near" values={{ count: near.length }} />}{' '}
          <button type="button" className="link" onClick={() => onChange({ near: !place.near })}>
            <FormattedMessage id={place.near ? 'overview.near.hide' : 'overview.near.show'} values={{ count: near.length }} />
          </button>
        </p>
      )}
      {next && (
        <p className="soft after-list">
          <FormattedMessage id="overview.more" values={{ shown: rows.length, total }} />
        </p>
      )}
      <KeyHints />
    </>
  );
}

interface GroupProps {
  readonly id: 'overview.group.under' | 'overview.group.unknown' | 'overview.group.near';
  readonly rows: readonly ReactNode[];
}

function RowGroup({ id, rows }: GroupProps) {
  if (rows.length === 0) return null;
  return (
    <>
      <tr className="group">
        <td colSpan={6}>
          <h2 className="minor">
            <FormattedMessage id={id} />
          </h2>
        </td>
      </tr>
      {rows}
    </>
  );
}

interface HeadProps {
  readonly sort: PortfolioSort;
  readonly unit: string;
  readonly onSort: (sort: PortfolioSort) => void;
}

/** Each head sorts one way: the most first, names from A. */
function RankedHead({ sort, unit, onSort }: HeadProps) {
  const { currency } = useFormats();
  const state = { by: sort, isDown: sort !== 'name' };
  return (
    <tr>
      <th scope="col">
        <span className="vh">
          <FormattedMessage id="overview.head.rank" />
        </span>
      </th>
      <SortHead column="name" sort={state} onSort={({ by }) => onSort(by)}>
        <FormattedMessage id="overview.head.what" />
      </SortHead>
      <th scope="col" className="g">
        <span className="z">
          <FormattedMessage id="overview.head.zero" />
        </span>
        <span>
          <FormattedMessage id="overview.head.allowed" />
        </span>
        <span className="t">
          <FormattedMessage id="overview.head.twice" />
        </span>
      </th>
      <SortHead column="volume" sort={state} onSort={({ by }) => onSort(by)} isNumber>
        <FormattedMessage id="overview.head.litres" values={{ unit }} />
      </SortHead>
      <SortHead column="money" sort={state} onSort={({ by }) => onSort(by)} isNumber>
        <FormattedMessage id="overview.head.money" values={{ currency: currency === 'USD' ? '$' : currency }} />
      </SortHead>
      <th scope="col" className="who">
        <FormattedMessage id="overview.who" />
      </th>
    </tr>
  );
}
