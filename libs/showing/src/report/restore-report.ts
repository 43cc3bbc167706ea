import type { ReportModel, ReportPage, ReportTable } from './report-model.js';

interface OldTable extends Omit<ReportTable, 'notes'> {
  readonly notes?: readonly string[];
}
interface OldPage extends Omit<ReportPage, 'why' | 'year' | 'tables' | 'ordinance'> {
  readonly year: Omit<ReportPage['year'], 'scale'>;
  readonly tables: readonly OldTable[];
  readonly ordinance: { readonly title: string; readonly says: string; readonly table: OldTable } | null;
}
/** As reports were kept before they had a page of all properties. */
interface OldModel extends Omit<ReportModel, 'format' | 'all' | 'pages' | 'method'> {
  readonly format: 1;
  readonly summary: OldTable | null;
  readonly pages: readonly OldPage[];
}

/** A report as it was kept, in today's shape: nothing that it says changes, and nothing is added to it. */
export function restoreReport(kept: string): ReportModel {
  const model = JSON.parse(kept) as OldModel | ReportModel;
  if (model.format === 2) return model;
  const { summary, pages, ...same } = model;
  const all = summary && { why: '', gauge: null, year: null, table: tableOf(summary), sections: [] };
  return { ...same, format: 2, all, pages: pages.map(pageOf), method: { title: '', paragraphs: [] } };
}

/** The reasons stood under each table as they were in its cells. */
function tableOf({ notes: _, ...table }: OldTable): ReportTable {
  const unknown = table.rows.flatMap(({ cells }) => cells.filter(({ value, reason }) => value === null && reason !== null));
  return { ...table, notes: unknown.map(({ label, reason }) => `${label}: ${reason}`) };
}

function pageOf({ tables, ordinance, year, ...same }: OldPage): ReportPage {
  const statement = ordinance && { title: ordinance.title, says: ordinance.says, tables: [tableOf(ordinance.table)] };
  return { ...same, why: '', year: { ...year, scale: '' }, tables: tables.map(tableOf), ordinance: statement };
}
