import type { VolumeFigures, Writer } from '../figures.js';
import { nextMonth, type PeriodSums } from '../period-sums.js';
import type { GivenMonth, GivenProperty, ReportPeriod } from '../report-input.js';
import { largestOf } from './drawings.js';

const SHOWN_MONTHS = 12;

/** How the volumes of a property are written, on its own page and on the page of all. */
export interface PageVolumes {
  /** of the period, in the unit of a wider column where one is named by its largest [L] */
  readonly ofPeriod: (columnLitres?: number) => VolumeFigures;
  readonly ofMonths: VolumeFigures;
  /** the months that a page shows */
  readonly shown: readonly GivenMonth[];
}

/** One volume, one written figure: a month is written as the table of months writes it, a longer period as it deserves. */
export function pageVolumes(writer: Writer, { months }: GivenProperty, sums: PeriodSums, period: ReportPeriod): PageVolumes {
  const from = nextMonth(period.until, 1 - SHOWN_MONTHS);
  const shown = months.filter(({ month }) => month >= (from < period.from ? from : period.from));
  const largest = largestOf(period.from === period.until ? [sums, ...shown] : [sums]);
  return { shown, ofMonths: writer.volumes(largestOf(shown)), ofPeriod: (column) => writer.volumes(largest, column) };
}
