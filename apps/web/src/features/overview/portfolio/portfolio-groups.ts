import type { PortfolioQuery } from '../../../graphql/__generated__/graphql.js';
import type { MapMark } from '../../../ui/maps/layout.js';

export type PortfolioRow = PortfolioQuery['portfolio']['rows'][number];
export type Group = 'over' | 'under' | 'unknown' | 'near';

/** Where a property stands: by the meter against need, and only where the difference is more than can be measured. */
export function groupOf({ account }: PortfolioRow): Group {
  const litres = account?.aboveNeed.litres ?? null;
  if (litres === null) return 'unknown';
  if (account?.aboveNeed.within) return 'near';
  return litres > 0 ? 'over' : litres < 0 ? 'under' : 'near';
}

/** The rows by group, each in the order of the list. */
export function groupedRows(rows: readonly PortfolioRow[]): Readonly<Record<Group, readonly PortfolioRow[]>> {
  const of = (group: Group): readonly PortfolioRow[] => rows.filter((row) => groupOf(row) === group);
  return { over: of('over'), under: of('under'), unknown: of('unknown'), near: of('near') };
}

/** Above need: mostly what no program explains, or mostly settings. Where settings are not known, no program explains it. */
export function markOf(row: PortfolioRow): MapMark {
  const group = groupOf(row);
  if (group !== 'over') return group;
  const unexplained = row.account?.unexplainedGap.litres ?? null;
  const settings = row.account?.settingsGap.litres ?? null;
  return unexplained === null || settings === null || unexplained > settings ? 'unexplained' : 'settings';
}
