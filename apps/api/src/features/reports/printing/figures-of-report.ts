import type { Figure, ReportModel, ReportPage, ReportTable } from '@rillbook/showing/report/report-model.js';

/** A figure with where in the report it stands. */
export interface PlacedFigure {
  /** the property; empty for what is of all */
  readonly property: string;
  readonly propertyId: string | null;
  readonly section: string;
  readonly figure: Figure;
}

const ofTable = (table: ReportTable): { section: string; figure: Figure }[] =>
  table.rows.flatMap(({ cells }) => cells.map((figure) => ({ section: table.title, figure })));

function ofPage(page: ReportPage): { section: string; figure: Figure }[] {
  const told = page.sections
    .filter(({ id }) => id !== 'saved')
    .flatMap(({ title, lines }) => lines.flatMap(({ figures }) => figures.map((figure) => ({ section: title, figure }))));
  return [...page.tables.flatMap(ofTable), ...told, ...(page.ordinance ? ofTable(page.ordinance.table) : [])];
}

/** Every figure of a report, once, in the order in which it is read. */
export function figuresOf(model: ReportModel): PlacedFigure[] {
  const ofAll = model.summary ? ofTable(model.summary).map((each) => ({ property: '', propertyId: null, ...each })) : [];
  const ofPages = model.pages.flatMap((page) =>
    ofPage(page).map((each) => ({ property: page.name, propertyId: page.propertyId, ...each })),
  );
  return [...ofAll, ...ofPages];
}
