import type { FindingCandidate, FindingKind } from '../finding-candidate.js';

/** What a finding was before it became what it is: the same cause, seen with less. */
export interface EarlierKind {
  readonly kind: FindingKind;
  readonly openedLocalDay: number;
}

/**
 * A finding through time, as a detector that saw each input when it came would have told it: one cause, from its first sign to its end.
 *
 * `openedLocalDay` is the local day (with its elapsed share) of the newest input that was needed to open it; `clearedLocalDay` that of the
 * input that showed its end, null where it is still seen. `fromDate` is when the cause began as far as can be told, before it was opened.
 * `litres` are those of a month, at the rate last seen. `atMost` is the most water and the highest confidence at which it was
 * ever seen, where the last is not the same: what was worth a look stays so. `earlier` are the kinds that the same cause was told as before, oldest first.
 */
export interface Episode extends FindingCandidate {
  readonly openedLocalDay: number;
  readonly clearedLocalDay: number | null;
  readonly earlier?: readonly EarlierKind[];
  readonly atMost?: { readonly litres: number | null; readonly confidence: number };
}
