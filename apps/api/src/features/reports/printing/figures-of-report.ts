import type { Figure, ReportModel, ReportPage, ReportSection, ReportTable } from '@rillbook/showing/report/report-model.js';

/** The heads of a file of figures, in the report's language. */
export const FIGURE_HEADS = {
  en: ['property', 'section', 'id', 'figure', 'value', 'unit', 'shown', 'reason'],
  es: ['propiedad', 'sección', 'id', 'cifra', 'valor', 'unidad', 'como se muestra', 'motivo'],
} as const satisfies Record<ReportModel['language'], readonly string[]>;

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

const ofSections = (sections: readonly ReportSection[]): { section: string; figure: Figure }[] =>
  sections.flatMap(({ title, lines }) => lines.flatMap(({ figures }) => figures.map((figure) => ({ section: title, figure }))));

/** What was saved stands in the table of the period. */
const ofPage = ({ tables, sections, ordinance }: ReportPage): { section: string; figure: Figure }[] => [
  ...tables.flatMap(ofTable),
  ...ofSections(sections.filter(({ id }) => id !== 'saved')),
  ...(ordinance?.tables ?? []).flatMap(ofTable),
];

/** Every figure of a report, once, in the order in which it is read. */
export function figuresOf(model: ReportModel): PlacedFigure[] {
  const all = model.all ? [...ofTable(model.all.table), ...ofSections(model.all.sections)] : [];
  const ofAll = all.map((each) => ({ property: '', propertyId: null, ...each }));
  const ofPages = model.pages.flatMap((page) =>
    ofPage(page).map((each) => ({ property: page.name, propertyId: page.propertyId, ...each })),
  );
  return [...ofAll, ...ofPages];
}
