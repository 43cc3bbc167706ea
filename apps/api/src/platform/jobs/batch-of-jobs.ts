import type { BackgroundJobRow, BatchSum, JobOutcome, Together } from './background-job.entity.js';

/** Work that was asked together, as one piece: how many are over of how many, and what they add up to. */
export function asOneJob(first: BackgroundJobRow, { counts: batch, sums }: Together): BackgroundJobRow {
  const { total, over, failed } = batch;
  if (total === 1) return first;
  const left = total - over;
  const one = (values: Partial<BackgroundJobRow>): BackgroundJobRow =>
    Object.assign(Object.create(null) as BackgroundJobRow, first, { says: null, outcome: null }, values);
  if (left === 0)
    return one({
      state: failed === total ? 'failed' : 'done',
      done: over,
      total,
      says: `${total - failed} of ${total} done`,
      outcome: failed === total ? first.outcome : sumOf(sums, failed),
    });
  // What is left of it waits for its instant: that it waits is told, and of how many.
  if (batch.waiting === left)
    return one({ state: 'queued', done: 0, total: left, payload: { ...first.payload, waitsUntil: batch.waitsUntil } });
  const { waitsUntil: _, ...payload } = first.payload;
  return one({ state: batch.running > 0 || over > 0 ? 'running' : 'queued', done: over, total, payload });
}

/** The numbers of those that did what was asked, and how many failed. */
function sumOf(sums: readonly BatchSum[], failed: number): JobOutcome | null {
  // Codes of problems are in capitals.
  const good = sums.find(({ code }) => !/^[A-Z]/.test(code));
  return good ? { code: good.code, details: { failed, ...good.details } } : null;
}
