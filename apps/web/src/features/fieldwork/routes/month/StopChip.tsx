import { type DragEvent, type KeyboardEvent, useEffect, useRef } from 'react';
import { FormattedMessage } from 'react-intl';
import type { BoardDayFragment } from '../../../../graphql/__generated__/graphql.js';
import { useOrderWords } from '../../use-order-words.js';
import { type BoardShape, type BoardStop, type CarriedTo, carriedBy, type Direction } from './board.js';
import { type Board, STOP_TYPE } from './use-carry.js';
import { usePlanWords } from './use-plan-words.js';

interface Props {
  readonly stop: BoardStop;
  readonly timed: BoardDayFragment['stops'][number] | null;
  readonly board: Board;
  readonly onDropHere: (event: DragEvent) => void;
}

const DIRECTIONS: readonly string[] = ['ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight'] satisfies readonly Direction[];

const Mark = ({ word }: { readonly word: 'monthPlan.locked' | 'monthPlan.visited' }) => (
  <span className="chip-mark">
    {' · '}
    <FormattedMessage id={word} />
  </span>
);

/** What is to be done there, the same for several controllers once with its count; a visit without other work needs no second line. */
function Works({
  orders,
}: {
  readonly orders: readonly { readonly kind: string; readonly what: string; readonly waterAgainOn?: string | null }[];
}) {
  const orderWords = useOrderWords();
  const counts = new Map<string, number>();
  for (const order of orders) counts.set(orderWords(order), (counts.get(orderWords(order)) ?? 0) + 1);
  const told = [...counts].map(([words, count]) => (count > 1 ? `${words} (${count})` : words));
  if (told.length > 0) return <span className="chip-work">{told.join('; ')}</span>;
  return (
    <span className="chip-mark">
      {' · '}
      <FormattedMessage id="monthPlan.visit" />
    </span>
  );
}

/** Where a key sends a stop; null for every other key. */
function keyedTo({ key, shiftKey, ctrlKey, metaKey, altKey }: KeyboardEvent, stop: BoardStop, shape: BoardShape): CarriedTo | null {
  if (ctrlKey || metaKey || altKey) return null;
  if (shiftKey && DIRECTIONS.includes(key)) return carriedBy(key as Direction, stop, shape);
  const { crewId, day, position, locked } = stop;
  return key.toLowerCase() === 'l' ? { crewId, day, position, locked: !locked } : null;
}

/** One stop: pressed it opens its dialog, with Shift and an arrow it goes that way, L locks it, and the mouse drags it. */
export function StopChip({ stop, timed, board, onDropHere }: Props) {
  const { clock } = usePlanWords();
  const place = useRef<HTMLButtonElement>(null);
  const { carry, shape } = board;
  const keepsKeys = carry.carriedId === stop.id;
  useEffect(() => {
    if (keepsKeys && !document.querySelector('dialog[open]')) place.current?.focus();
  }, [keepsKeys, stop.day, stop.position]);
  const stays = board.isPast || timed?.visited === true;
  const onKey = (event: KeyboardEvent): void => {
    const to = stays || carry.isBusy ? null : keyedTo(event, stop, shape);
    if (!to) return;
    event.preventDefault();
    void carry.run(stop, to);
  };
  return (
    <li onDrop={onDropHere}>
      <button
        ref={place}
        type="button"
        className={stop.locked ? 'chip is-locked' : 'chip'}
        draggable={!stays}
        onDragStart={(event) => {
          event.dataTransfer.setData(STOP_TYPE, stop.id);
          event.dataTransfer.effectAllowed = 'move';
        }}
        onKeyDown={onKey}
        onClick={() => !stays && board.onMove(stop.id)}
      >
        <span className="chip-time">{timed ? clock(timed.beginMinute) : ''}</span> <b>{stop.name}</b>
        {stop.locked && <Mark word="monthPlan.locked" />}
        {timed?.visited && <Mark word="monthPlan.visited" />}
        <Works orders={timed?.stop.workOrders ?? []} />
      </button>
    </li>
  );
}
