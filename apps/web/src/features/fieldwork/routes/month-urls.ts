import { type Address, monthIn } from '../../../page/use-address.js';

export interface MonthPlanPlace {
  /** YYYY-MM; the organization's own month where none is named. */
  readonly month: string | null;
  /** The stop, or the thing without a day, whose dialog is open. */
  readonly move: string | null;
  /** Whether the seasonal change is being ordered. */
  readonly isSeason: boolean;
}

export const monthPlanAddress: Address<MonthPlanPlace> = {
  read: (query) => ({ month: monthIn(query.get('month')), move: query.get('move'), isSeason: query.has('season') }),
  write: ({ month, move, isSeason }) => ({ month, move, season: isSeason ? 'yes' : null }),
};

/** The page on which a month is planned. */
export const monthPlanPath = (month: string): string => `/routes/month?month=${month}`;

const MONTHS_A_YEAR = 12;

/** So many months after a month of the calendar. */
export function monthsAfter(month: string, months: number): string {
  const [year, number] = month.split('-').map(Number) as [number, number];
  const count = year * MONTHS_A_YEAR + number - 1 + months;
  return `${Math.floor(count / MONTHS_A_YEAR)}-${String((count % MONTHS_A_YEAR) + 1).padStart(2, '0')}`;
}
