import type { OperationRow } from './operation.entity.js';

/** Of two that said different things: what this phone sent, or what somebody else said. */
export type Word = 'sent' | 'other';

/** What was seen in a zone and how a visit ended is said again by the later word; what was read or found stays as it first came. */
const STANDING: Readonly<Record<string, Word>> = { 'note-zone': 'sent', 'close-visit': 'sent', reading: 'other', settings: 'other' };

/** Which of the two stands now; null where there are not two, or the other cannot be put in its place. */
export const wordThatStands = ({ kind, verdict, answer }: Pick<OperationRow, 'kind' | 'verdict' | 'answer'>): Word | null =>
  verdict === 'conflict' && answer.other ? (STANDING[kind] ?? null) : null;
