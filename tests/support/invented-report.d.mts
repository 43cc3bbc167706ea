import type { ReportInput } from '@rillbook/showing/report/report-input.js';

/** The input of the report of a seed: language, units, period and number of properties follow from it. */
export function inventedReport(seed: number): ReportInput;
