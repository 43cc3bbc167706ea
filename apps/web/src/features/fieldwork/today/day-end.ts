/** A stop as far as the day's end asks. */
export interface StopOfDay {
  readonly visit?: { readonly closedAt?: string | null; readonly workedMinutes?: number | null } | null;
  readonly workOrders: readonly {
    readonly state: string;
    readonly leftNote?: string | null;
    readonly finding?: { readonly id: string; readonly kind: string; readonly litres?: number | null } | null;
  }[];
}

/** What a crew's day came to. */
export interface DayEnd {
  readonly stops: number;
  readonly closed: number;
  readonly done: number;
  /** orders that were given for this day and are not done */
  readonly left: number;
  /** null where nobody counted */
  readonly workedMinutes: number | null;
  /** what the findings told of that the day's work answers; null where none of them tells of water [L] */
  readonly litres: number | null;
}

/** Their water is missing, not lost. */
const TOO_LITTLE: ReadonlySet<string> = new Set(['under-programmed', 'not delivering']);

const sumOrNull = (values: readonly number[]): number | null => (values.length > 0 ? values.reduce((sum, each) => sum + each, 0) : null);

/** What was done, what is left, and the water in it. A finding with two orders counts once. */
export function dayEnd(stops: readonly StopOfDay[]): DayEnd {
  const orders = stops.flatMap(({ workOrders }) => workOrders).filter(({ state }) => state !== 'dropped');
  const isDone = ({ state }: { readonly state: string }): boolean => state === 'done';
  const told = orders.filter(isDone).flatMap(({ finding }) => (finding && !TOO_LITTLE.has(finding.kind) ? [finding] : []));
  const findings = new Map(told.map((finding) => [finding.id, finding]));
  return {
    stops: stops.length,
    closed: stops.filter(({ visit }) => visit?.closedAt).length,
    done: orders.filter(isDone).length,
    left: orders.filter((order) => !isDone(order)).length,
    workedMinutes: sumOrNull(stops.flatMap(({ visit }) => visit?.workedMinutes ?? [])),
    litres: sumOrNull([...findings.values()].flatMap(({ litres }) => (typeof litres === 'number' && litres > 0 ? [litres] : []))),
  };
}
