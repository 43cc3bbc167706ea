import type { ReportModel } from '@rillbook/showing/report/report-model.js';
import { FIGURE_HEADS, figuresOf } from './figures-of-report.js';

/** What a spreadsheet would take for a formula (OWASP ASVS 5.0, 1.2.10). */
const FORMULA = /^[=+\-@\t\r]/;

const cell = (value: string | number | null): string => {
  if (typeof value === 'number') return String(value);
  const text = FORMULA.test(value ?? '') ? `'${value}` : (value ?? '');
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
};

/** Every figure of a report as a line; the value is the number that is shown. */
export function reportCsv(model: ReportModel): string {
  const lines = figuresOf(model).map(({ property, section, figure: { id, label, value, unit, shown, reason } }) =>
    [property, section, id, label, value, unit, shown, reason].map(cell).join(','),
  );
  return `\ufeff${[FIGURE_HEADS[model.language].join(','), ...lines].join('\r\n')}\r\n`;
}
