import { periodGauge, yearOfGauges } from './drawings.js';
import { type Writer, writerOf } from './figures.js';
import { methodOf, qualityOf } from './method.js';
import { ordinanceOf } from './ordinance.js';
import { nextMonth, sumsOf } from './period-sums.js';
import type { GivenProperty, ReportInput } from './report-input.js';
import type { ReportModel, ReportPage } from './report-model.js';
import { savingFigures, savingsOf } from './savings.js';
import { sectionsOf } from './sections.js';
import { monthTable, periodFigures, periodTable, summaryTable } from './tables.js';
import { periodInWords, verdictOf, verdictOfAll } from './verdict.js';

const SHOWN_MONTHS = 12;

/**
 * The water report of a client: the one model that its PDF, its page, its mail and its files are made from.
 *
 * Every number is rounded and written here, once; nothing that makes an output formats a number again.
 */
export function writeReport(input: ReportInput): ReportModel {
  const writer = writerOf(input);
  const { say } = writer.words;
  const period = periodInWords(writer, input.period);
  const all = input.properties.map(({ id, name, months }) => ({ id, name, sums: sumsOf(months, input.period) }));
  const pages = input.properties.map((property) => pageOf(writer, property, input, period));
  const only = pages.length === 1 ? pages[0] : undefined;
  return {
    format: 1,
    language: input.language,
    units: input.units,
    currency: input.currency,
    brand: input.brand,
    client: input.client,
    period: input.period,
    title: say('title'),
    periodInWords: period,
    verdict: only
      ? only.verdict
      : verdictOfAll(
          writer,
          period,
          all.map(({ sums }) => sums),
        ),
    note: input.note?.trim() ? { title: say('note'), text: input.note.trim() } : null,
    summary: only ? null : summaryTable(writer, all),
    pages,
    footer: say('footer', { version: input.dataVersion, day: writer.formats.dayOfYear(input.madeOn) }),
    pageOf: say('pageOf'),
    dataVersion: input.dataVersion,
    madeOn: input.madeOn,
  };
}

function pageOf(writer: Writer, property: GivenProperty, input: ReportInput, period: string): ReportPage {
  const { months, id, name, where } = property;
  const { confidence } = input;
  const sums = sumsOf(months, input.period);
  const savings = savingsOf(property, input.period);
  const figures = [...periodFigures(writer, sums), ...savingFigures(writer, savings, property.pricePerLitre)];
  const from = nextMonth(input.period.until, 1 - SHOWN_MONTHS);
  const shown = months.filter(({ month }) => month >= (from < input.period.from ? from : input.period.from));
  return {
    propertyId: id,
    name,
    where,
    verdict: verdictOf(writer, name, period, sums, confidence),
    gauge: periodGauge(writer, sums, confidence),
    year: yearOfGauges(writer, months, input.period.until, confidence),
    figures,
    sections: sectionsOf(writer, property, input.period, savings),
    tables: [periodTable(writer, figures), monthTable(writer, shown)],
    ordinance: ordinanceOf(writer, property, period, sums),
    method: methodOf(writer, savings),
    quality: qualityOf(writer, months, input.period),
  };
}
