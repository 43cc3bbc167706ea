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

/** The same place with a report opened. */
export function openSearch(search: string, report: string): string {
  const query = new URLSearchParams(search);
  query.set('report', report);
  return query.toString();
}
