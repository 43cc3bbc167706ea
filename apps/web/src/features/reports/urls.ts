import { type Address, monthIn } from '../../page/use-address.js';

export interface ReportsPlace {
  /** the month in which the reports end; the newest where none is named */
  readonly month: string | null;
  /** the report that is open */
  readonly report: string | null;
}

export const reportsAddress: Address<ReportsPlace> = {
  read: (query) => ({ month: monthIn(query.get('month')), report: query.get('report') }),
  write: ({ month, report }) => ({ month, report }),
};

/** The same place with a report opened; in the list of its month where that is another. */
export function openSearch(search: string, report: string, month: string | null = null): string {
  const query = new URLSearchParams(search);
  if (month !== null) query.set('month', month);
  query.set('report', report);
  return query.toString();
}
