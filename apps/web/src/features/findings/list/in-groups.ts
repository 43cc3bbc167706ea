import { inOrder } from './in-order.js';
import { isTooLittle } from './water-of-kind.js';

/** What the list is worked through by: water that costs, plants that thirst, records and rules, and what was seldom worth a look here. */
export const GROUPS = ['water', 'plants', 'records', 'seldom'] as const;
export type FindingGroup = (typeof GROUPS)[number];

interface Grouped<Finding> {
  readonly group: FindingGroup;
  readonly findings: readonly Finding[];
}

interface Kinded {
  readonly kind: string;
  readonly money?: number | null;
  readonly litres?: number | null;
}

const RECORDS: ReadonlySet<string> = new Set(['doubtful reading', 'stale', 'flow to be tested', 'breaks a rule']);

/** Findings by what is to be done first, the dearest first in each group; groups without any are left out. */
export function inGroups<Finding extends Kinded>(
  findings: readonly Finding[],
  seldomUseful: ReadonlySet<string>,
): readonly Grouped<Finding>[] {
  const groupOf = ({ kind }: Finding): FindingGroup => {
    if (seldomUseful.has(kind)) return 'seldom';
    if (isTooLittle(kind)) return 'plants';
    return RECORDS.has(kind) ? 'records' : 'water';
  };
  return GROUPS.map((group) => ({ group, findings: inOrder(findings.filter((finding) => groupOf(finding) === group)) })).filter(
    ({ findings: own }) => own.length > 0,
  );
}

/** Groups as far as a number of findings goes. */
export function firstOf<Finding>(
  groups: readonly Grouped<Finding>[],
  count: number,
): readonly (Grouped<Finding> & { readonly from: number })[] {
  let from = 0;
  return groups.flatMap(({ group, findings }) => {
    const begins = from;
    from += findings.length;
    return begins < count ? [{ group, from: begins, findings: findings.slice(0, count - begins) }] : [];
  });
}
