import type { DraftRow } from '../drafts/draft-row.js';

/** Checks the rows of one file in their order: references, times, values against each other, rows against rows before them. */
export type FileCheck = (row: DraftRow) => void;

/** Checks lines that are one thing (a settings fact, a rate schedule) when all of them are there. */
export type GroupCheck = (rows: readonly DraftRow[]) => void;
