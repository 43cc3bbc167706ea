/** The months from one day's to another's, oldest first. */
export function monthsBetween(first: string, last: string): string[] {
  const months: string[] = [];
  const [year = 0, month = 1] = first.split('-').map(Number);
  for (let at = 0; ; at += 1) {
    const next = new Date(Date.UTC(year, month - 1 + at, 1)).toISOString().slice(0, 7);
    if (next > last.slice(0, 7)) return months;
    months.push(next);
  }
}

/** The last day of a month. */
export function lastDayOf(month: string): string {
  const [year = 0, number = 1] = month.split('-').map(Number);
  return new Date(Date.UTC(year, number, 0)).toISOString().slice(0, 10);
}
