/** What became of the rows of a bulk import: keyed by nature, so that the same rows again are all the same. */
export interface MergeCounts {
  readonly created: number;
  readonly changed: number;
  readonly same: number;
}
