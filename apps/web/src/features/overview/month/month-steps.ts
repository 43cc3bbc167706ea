import type { MonthPageQuery } from '../../../graphql/__generated__/graphql.js';

/** How one property stands in one step of the month. */
export type Cell = 'done' | 'waits' | 'stuck' | 'nothing';
export type StepName = 'readings' | 'accounts' | 'findings' | 'work' | 'done';

export interface Named {
  readonly id: string;
  readonly name: string;
}

/** One step of the month: a count that the server made, a mark for each property, and those that hold it up. */
export interface Step {
  readonly name: StepName;
  readonly done: number;
  readonly total: number;
  readonly cells: readonly Cell[];
  readonly lacking: readonly Named[];
}

type Row = MonthPageQuery['portfolio']['rows'][number];
type Order = MonthPageQuery['workOrders'][number];

/** The steps in the order in which a month goes. */
export function monthSteps({ monthBoard: board, portfolio: { rows }, workOrders }: MonthPageQuery): readonly Step[] {
  const toGive = workOrders.filter(({ state }) => state === 'open');
  const given = workOrders.filter(({ state }) => state === 'given out');
  const step = (name: StepName, done: number, total: number, cell: (row: Row) => Cell): Step => {
    const cells = rows.map(cell);
    const lacking = rows.filter((_, at) => cells[at] === 'stuck' || cells[at] === 'waits').map(({ property }) => property);
    return { name, done, total, cells, lacking };
  };
  return [
    step('readings', board.readingsIn, board.properties, ({ account }) => (isKnown(account?.metered.litres) ? 'done' : 'stuck')),
    step('accounts', board.accountsComputed, board.properties, ({ account }) => (isKnown(account?.needed.litres) ? 'done' : 'stuck')),
    step('findings', board.findingsDecided, board.findingsDecided + board.findingsOpen, ({ findingCount, topFinding }) =>
      findingCount === 0 ? 'nothing' : topFinding?.state === 'open' ? 'waits' : 'done',
    ),
    step('work', board.workGivenOut + board.workDone, board.workGivenOut + board.workDone + toGive.length, workCell(toGive, given)),
    step('done', board.workDone, board.workGivenOut + board.workDone, workCell(given, [])),
  ];
}

const isKnown = (litres: number | null | undefined): boolean => typeof litres === 'number';

/** A property waits while any of its work does. */
function workCell(waiting: readonly Order[], done: readonly Order[]): (row: Row) => Cell {
  const has = (orders: readonly Order[]): ReadonlySet<string> => new Set(orders.map(({ property }) => property.id));
  const [waits, ends] = [has(waiting), has(done)];
  return ({ property }) => (waits.has(property.id) ? 'waits' : ends.has(property.id) ? 'done' : 'nothing');
}
