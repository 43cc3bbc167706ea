import { FormattedMessage } from 'react-intl';
import type { MessageId } from '../../../i18n/catalogue.js';
import type { Cell } from './month-steps.js';

const PITCH = 20.6;
const HEIGHT = 30;
const IN_A_ROW = 38;

/** A mark for each property, the same order in every row; the words beside it say the same, so it is not read out. */
export function StepMarks({ cells }: { readonly cells: readonly Cell[] }) {
  if (cells.length === 0) return null;
  const rows = Math.ceil(cells.length / IN_A_ROW);
  const [width, height] = [PITCH * Math.min(cells.length, IN_A_ROW), HEIGHT * rows];
  return (
    <svg className="cells" viewBox={`0 0 ${width} ${height}`} width={width} height={height} aria-hidden="true">
      {cells.map((cell, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a mark is its place in the row
        <Mark key={at} cell={cell} x={(at % IN_A_ROW) * PITCH + 1} y={Math.floor(at / IN_A_ROW) * HEIGHT + 3} />
      ))}
    </svg>
  );
}

/** Marks differ in shape and fill, so that they read without colour. */
function Mark({ cell, x, y }: { readonly cell: Cell; readonly x: number; readonly y: number }) {
  const box = `M${x} ${y}h15.6v24h-15.6z`;
  switch (cell) {
    case 'done':
      return <path d={box} fill="var(--ink)" data-cell={cell} />;
    case 'waits':
      return <path d={box} fill="var(--paper)" stroke="var(--ink)" strokeWidth="1.5" data-cell={cell} />;
    case 'stuck':
      return (
        <path
          d={`${box}M${x} ${y + 12}l12-12M${x} ${y + 24}l15.6-15.6M${x + 8} ${y + 24}l7.6-7.6`}
          fill="none"
          stroke="var(--clay)"
          strokeWidth="1.5"
          data-cell={cell}
        />
      );
    case 'nothing':
      return <path d={`M${x + 5} ${y + 12}h6`} stroke="var(--rule-2)" strokeWidth="2" data-cell={cell} />;
  }
}

const KEYS: readonly (readonly [Cell, MessageId])[] = [
  ['done', 'overview.key.done'],
  ['waits', 'overview.key.waits'],
  ['stuck', 'overview.key.stuck'],
  ['nothing', 'overview.key.nothing'],
];

/** How the marks are read. */
export function StepKey() {
  return (
    <ul className="key">
      <li>
        <FormattedMessage id="overview.key.each" />
      </li>
      {KEYS.map(([cell, id]) => (
        <li key={cell}>
          <svg width="10" height="16" viewBox="0 0 17 28" aria-hidden="true">
            <Mark cell={cell} x={0.7} y={2} />
          </svg>
          <FormattedMessage id={id} />
        </li>
      ))}
    </ul>
  );
}
