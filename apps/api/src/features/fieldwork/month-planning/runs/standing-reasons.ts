import type { KeptReason, MonthPlanRow } from './month-plan.entity.js';

/** Why things have no day, as far as the last planning leaves it standing: undone, only what was found before it. */
export const standingReasons = (latest: MonthPlanRow | null): readonly KeptReason[] =>
  latest?.unplaced.filter(({ isEarlier = false }) => isEarlier || latest.undoneAt === null) ?? [];
