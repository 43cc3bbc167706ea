/** The kinds of finding, in the exact words of the column and the screen. All but 'seen on site' are told by records; that one by a person. */
export type FindingKind =
  | 'overwatered'
  | 'over-programmed'
  | 'under-programmed'
  | 'unexplained use'
  | 'not delivering'
  | 'flow to be tested'
  | 'steady flow'
  | 'off-schedule run'
  | 'watered in rain'
  | 'zone flow changed'
  | 'breaks a rule'
  | 'mixed water needs'
  | 'over allowance'
  | 'doubtful reading'
  | 'stale'
  | 'seen on site';

/** What a finding says, as code and details; the screens make the sentence in the reader's language and units. */
export interface Says {
  readonly code: string;
  readonly details: Readonly<Record<string, string | number | null | readonly string[]>>;
}

/**
 * Something a person should look at.
 *
 * `causeKey` is one per cause: a candidate whose key is that of an open finding is the same finding (its kind may have become another).
 * `causeFamily` is shared by kinds that one cause can take: an open `overwatered` of the same family becomes the `over-programmed` or
 * `unexplained use` of this candidate. `confidence` is the normal probability that the gap exceeds zero; 1 where nothing is uncertain.
 */
export interface FindingCandidate {
  readonly kind: FindingKind;
  readonly causeKey: string;
  readonly causeFamily: string;
  readonly meterId: string | null;
  readonly controllerId: string | null;
  readonly zoneIds: readonly string[];
  readonly fromDate: string;
  readonly untilDate: string;
  readonly litres: number | null;
  readonly sdLitres: number | null;
  readonly money: number | null;
  readonly confidence: number;
  readonly evidence: Readonly<Record<string, unknown>>;
  readonly says: Says;
}
