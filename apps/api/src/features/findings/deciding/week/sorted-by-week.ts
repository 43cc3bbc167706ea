import type { FindingRow } from '../../finding.entity.js';
import { isSilenced } from '../is-silenced.js';

/** Findings by what a week made of them; those that are silent, and older ones that somebody works on, are in none. */
interface SortedByWeek {
  readonly begun: FindingRow[];
  readonly cameBack: FindingRow[];
  readonly ended: FindingRow[];
  readonly waiting: FindingRow[];
}

/** Sorts findings by what became of them since an instant, keeping their order. */
export function sortedByWeek(rows: readonly FindingRow[], begins: Date, today: string): SortedByWeek {
  const since = (at: Date | null): boolean => at !== null && at >= begins;
  const heard = rows.filter((row) => row.state !== 'dismissed' && !(row.state === 'open' && isSilenced(row, today)));
  const standing = heard.filter(({ state }) => state !== 'resolved');
  return {
    begun: standing.filter(({ openedAt, cameBack }) => since(openedAt) && cameBack === 0),
    cameBack: standing.filter(({ openedAt, cameBack }) => since(openedAt) && cameBack > 0),
    ended: heard.filter(({ state, decidedAt, clearedAt }) => state === 'resolved' && (since(decidedAt) || since(clearedAt))),
    waiting: standing.filter(({ state, openedAt }) => state === 'open' && !since(openedAt)),
  };
}
