import { type ReactNode, type RefCallback, useCallback } from 'react';
import { useIntl } from 'react-intl';
import { scrolls } from './scrolls.js';
import './tables.css';

interface Props {
  /** What the table holds, for those who cannot see it. */
  readonly name: string;
  readonly head: ReactNode;
  readonly children: ReactNode;
  readonly foot?: ReactNode;
  readonly isTight?: boolean;
  /** A look of its own on top of the one look: rank, plan, ledger, days. */
  readonly look?: 'rank' | 'plan' | 'ledger' | 'days';
}

/** One look: one ink line under the head, hairlines between rows, one ink line above a sum. */
export function Table({ name, head, children, foot, isTight = false, look }: Props) {
  const scroll = useCallback<RefCallback<HTMLDivElement>>(
    (place) => {
      if (place) scrolls(place, name);
    },
    [name],
  );
  const className = [look ?? '', isTight ? 'tight' : ''].filter(Boolean).join(' ');
  return (
    <div className="scroll" ref={scroll}>
      <table className={className || undefined} aria-label={name}>
        <thead>{head}</thead>
        <tbody>{children}</tbody>
        {foot && <tfoot>{foot}</tfoot>}
      </table>
    </div>
  );
}

export interface Sort<Column extends string> {
  readonly by: Column;
  readonly isDown: boolean;
}

interface HeadProps<Column extends string> {
  readonly column: Column;
  readonly sort: Sort<Column>;
  readonly onSort: (sort: Sort<Column>) => void;
  readonly isNumber?: boolean;
  /** Whether its first press puts the largest first; numbers do. */
  readonly startsDown?: boolean;
  readonly children: ReactNode;
}

const STATES = {
  down: { aria: 'descending', sign: ' ▾', says: 'parts.sortedDown' },
  up: { aria: 'ascending', sign: ' ▴', says: 'parts.sortedUp' },
  none: { aria: 'none', sign: '', says: undefined },
} as const;

/** A head that sorts: pressed again it turns round. */
export function SortHead<Column extends string>({
  column,
  sort,
  onSort,
  isNumber = false,
  startsDown = isNumber,
  children,
}: HeadProps<Column>) {
  const intl = useIntl();
  const isSorted = sort.by === column;
  const next = { by: column, isDown: isSorted ? !sort.isDown : startsDown };
  const state = STATES[isSorted ? (sort.isDown ? 'down' : 'up') : 'none'];
  return (
    <th scope="col" className={isNumber ? 'num' : undefined} aria-sort={state.aria}>
      <button type="button" className="sort" onClick={() => onSort(next)} title={state.says && intl.formatMessage({ id: state.says })}>
        {children}
        <span aria-hidden="true">{state.sign}</span>
      </button>
    </th>
  );
}

interface CellProps {
  readonly children?: ReactNode;
  readonly isNumber?: boolean;
}

export function Head({ children, isNumber = false }: CellProps) {
  return (
    <th scope="col" className={isNumber ? 'num' : undefined}>
      {children}
    </th>
  );
}

interface NumProps {
  readonly children?: ReactNode;
  /** What its column is, where a narrow screen has no head. */
  readonly head?: string | undefined;
}

/** A number in a column: to the right, tabular, its unit in the head. */
export function Num({ children, head }: NumProps) {
  return (
    <td className="num" data-head={head}>
      {children}
    </td>
  );
}
