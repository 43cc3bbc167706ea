interface Weighed {
  readonly money?: number | null;
  readonly litres?: number | null;
}

/** The dearest first, then the largest, then those that have neither; the order of the server where they are alike. */
export function inOrder<Finding extends Weighed>(findings: readonly Finding[]): readonly Finding[] {
  const weight = (value: number | null | undefined): number => value ?? -1;
  return [...findings].sort((one, other) => weight(other.money) - weight(one.money) || weight(other.litres) - weight(one.litres));
}
