const MONTHS = 12;

/** A month, YYYY-MM, and the eleven that follow it. */
export function monthsFrom(first: string): readonly string[] {
  const [year, month] = first.split('-').map(Number) as [number, number];
  return Array.from({ length: MONTHS }, (_, ahead) => new Date(Date.UTC(year, month - 1 + ahead, 1)).toISOString().slice(0, 7));
}
