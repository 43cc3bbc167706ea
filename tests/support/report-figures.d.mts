import type { ReportModel } from '@rillbook/showing/report/report-model.js';

export interface ReadFigure {
  readonly property: string;
  readonly section: string;
  readonly id: string;
  readonly label: string;
  readonly value: number | null;
  readonly unit: string;
  readonly shown: string;
  readonly reason: string | null;
}
export function figuresOfCsv(csv: string): ReadFigure[];
export function figuresOfXlsx(xlsx: Uint8Array): ReadFigure[];
export function missingInPdf(model: ReportModel, text: string): string[];
export function apart(name: string, found: readonly object[], wanted: readonly object[]): string[];
