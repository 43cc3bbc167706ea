import { problem } from '../../platform/problems/problem.js';

/** Faults of what phones send. */
export const phonesProblems = {
  /** The same key came with another body. */
  operationConflict: problem(
    'OPERATION_CONFLICT',
    409,
    (d: { key: string; receivedAt: string }) =>
      `Operation ${d.key} was received with another content at ${d.receivedAt}. What came first stands; save it again, and it gets a new name.`,
  ),
  /** A kind of operation or a form of its body that this server does not know. */
  operationUnknown: problem(
    'OPERATION_UNKNOWN',
    422,
    (d: { kind: string; payloadVersion: number }) =>
      `This server does not know operations of kind '${d.kind}', form ${d.payloadVersion}. It is kept as it came: update the server, then send it again.`,
  ),
  /** Somebody else decided otherwise meanwhile, and what the phone said cannot be done any more. */
  decidedMeanwhile: problem(
    'DECIDED_MEANWHILE',
    409,
    (d: { what: string; state: string }) => `${d.what} was decided meanwhile: it is ${d.state}. Look at both and decide.`,
  ),
  /** There are not two words between which somebody could choose. */
  nothingToChoose: problem(
    'NOTHING_TO_CHOOSE',
    409,
    (d: { kind: string }) => `Of this ('${d.kind}') there is nothing to choose: look at it where it belongs, then mark it as seen.`,
  ),
  /** More operations than are taken at once. */
  batchTooLarge: problem(
    'BATCH_TOO_LARGE',
    413,
    (d: { found: number; most: number }) => `${d.found} operations came at once; at most ${d.most} are taken. Send them in parts.`,
  ),
};
