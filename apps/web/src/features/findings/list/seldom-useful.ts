interface Precision {
  readonly kind: string;
  readonly isSeldomUseful: boolean;
}

/** Kinds that were seldom worth a look here, as this organization decided. */
export const seldomUsefulOf = (precision: readonly Precision[]): ReadonlySet<string> =>
  new Set(precision.filter(({ isSeldomUseful }) => isSeldomUseful).map(({ kind }) => kind));
