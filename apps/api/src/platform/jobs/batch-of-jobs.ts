import type { BackgroundJobRow, JobOutcome } from './background-job.entity.js';

/** How far work is that was asked together. */
export interface Batch {
  readonly total: number;
  readonly over: number;
  readonly failed: number;
  readonly running: number;
  readonly outcomes: readonly (JobOutcome | null)[];
}

/** Work that was asked together, as one piece: how many are over of how many, and what they add up to. */
export function asOneJob(newest: BackgroundJobRow, batch: Batch): BackgroundJobRow {
  if (batch.total === 1) return newest;
  const { total, over, failed } = batch;
  return Object.assign(Object.create(null) as BackgroundJobRow, newest, {
    state: stateOf(batch),
    done: over,
    total,
    says: over === total ? `${total - failed} of ${total} done` : null,
    outcome: over === total ? sumOf(batch) : null,
  });
}

function stateOf({ total, over, failed, running }: Batch): BackgroundJobRow['state'] {
  if (over < total) return running > 0 || over > 0 ? 'running' : 'queued';
  return failed === total ? 'failed' : 'done';
}

/** The numbers of those that ended alike, added up, and how many failed; where all failed, what the newest failed with. */
function sumOf({ outcomes, failed, total }: Batch): JobOutcome | null {
  const known = outcomes.filter((outcome) => outcome !== null);
  if (failed === total) return known[0] ?? null;
  const isFault = ({ code }: JobOutcome): boolean => /^[A-Z]/.test(code);
  const code = known.find((outcome) => !isFault(outcome))?.code;
  if (code === undefined) return null;
  const details: Record<string, number> = { failed };
  for (const outcome of known) {
    if (outcome.code !== code) continue;
    for (const [name, value] of Object.entries(outcome.details))
      if (typeof value === 'number') details[name] = (details[name] ?? 0) + value;
  }
  return { code, details };
}
