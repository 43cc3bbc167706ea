/** Where a volume comes from, best first: hourly or 15-minute usage, then readings, then bills. */
export type IntervalSource = 'usage' | 'readings' | 'bills';

/**
 * A volume between two instants.
 *
 * Instants are local day numbers: whole days since 1970-01-01 on the property's calendar, plus the elapsed share of that local day (of its
 * real 23, 24 or 25 hours; see `localDayNumber` in irrigation/calendar). `sdLitres` is the standard deviation from the register's
 * resolution alone; the meter's own error is added by the account.
 */
export interface UsageInterval {
  readonly fromLocalDay: number;
  readonly toLocalDay: number;
  readonly litres: number;
  readonly sdLitres: number;
  readonly source: IntervalSource;
}
