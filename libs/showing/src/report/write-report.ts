import { ofAllProperties } from './parts/all-properties.js';
import { periodGauge, yearOfGauges } from './parts/drawings.js';
import { type Writer, writerOf } from './figures.js';
import { pageVolumes } from './parts/page-volumes.js';
import { methodOf, methodOfSaving, qualityOf } from './parts/method.js';
import { ordinanceOf } from './parts/ordinance.js';
import { sumsOf } from './period-sums.js';
import type { GivenMonth, GivenProperty, ReportInput, ReportPeriod } from './report-input.js';
import type { ReportModel, ReportPage } from './report-model.js';
import { savingFigures, savingsOf } from './parts/savings.js';
import { findingsIn, sectionsOf } from './parts/sections.js';
import { monthTable, periodFigures, periodTable } from './parts/tables.js';
import { duringInWords, periodInWords, verdictOf, verdictOfAll, whenInWords } from './parts/verdict.js';
import { isUnexplained, whyOf } from './parts/why.js';

/**
 * The water report of a client: the one model that its PDF, its page, its mail and its files are made from.
 *
 * Every number is rounded and written here, once; nothing that makes an output formats a number again.
 */
export function writeReport(input: ReportInput): ReportModel {
  const writer = writerOf(input);
  const { say } = writer.words;
  const period = periodInWords(writer, input.period);
  const all = input.properties.map((property) => {
    const sums = sumsOf(property.months, input.period);
    return { id: property.id, name: property.name, sums, volumes: pageVolumes(writer, property, sums, input.period).ofPeriod };
  });
  const pages = input.properties.map((property) => pageOf(writer, property, input));
  const only = pages.length === 1 ? pages[0] : undefined;
  const savings = input.properties.map((property) => savingsOf(property, input.period));
  const allMonths = input.properties.flatMap(({ months }) => months);
  return {
    format: 2,
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
          whenInWords(writer, input.period, lastDayWhereNotOver(allMonths, input.period)),
          all.map(({ sums }) => sums),
        ),
    note: input.note?.trim() ? { title: say('note'), text: input.note.trim() } : null,
    all: only ? null : ofAllProperties(writer, { input, all, savings, sections: pages.map(({ sections }) => sections) }),
    pages,
    method: methodOf(
      writer,
      pages.flatMap(({ sections }) => sections),
    ),
    footer: say('footer', { version: input.dataVersion, day: writer.formats.dayOfYear(input.madeOn) }),
    pageOf: say('pageOf'),
    dataVersion: input.dataVersion,
    madeOn: input.madeOn,
  };
}

function pageOf(writer: Writer, property: GivenProperty, input: ReportInput): ReportPage {
  const { months, id, name, where } = property;
  const { confidence } = input;
  const sums = sumsOf(months, input.period);
  const savings = savingsOf(property, input.period);
  const { shown, ofMonths, ofPeriod } = pageVolumes(writer, property, sums, input.period);
  const volumes = ofPeriod();
  const figures = [...periodFigures(writer, sums, volumes, confidence), ...savingFigures(writer, savings, property.pricePerLitre)];
  const when = whenInWords(writer, input.period, lastDayWhereNotOver(months, input.period));
  return {
    propertyId: id,
    name,
    where,
    verdict: verdictOf(writer, { name, when, sums, volumes, confidence }),
    why: whyOf(writer, { sums, volumes, confidence, isUntested: isUntested(property, input.period) }),
    gauge: periodGauge(writer, sums, volumes, confidence),
    year: yearOfGauges(writer, months, { until: input.period.until, confidence, volumes: ofMonths }),
    figures,
    sections: sectionsOf(writer, property, input.period, { savings, isUnexplained: isUnexplained(sums, confidence) }),
    tables: [periodTable(writer, figures), monthTable(writer, shown, ofMonths)],
    ordinance: ordinanceOf(writer, { property, period: duringInWords(writer, input.period), sums, volumes }),
    method: methodOfSaving(writer, savings),
    quality: qualityOf(writer, months, input.period),
  };
}

/** Whether the flows on record did not fit the meter, and still wait for their test. */
const isUntested = ({ findings }: GivenProperty, period: ReportPeriod): boolean =>
  findingsIn(findings, period).some(({ kind, state }) => kind === 'flow to be tested' && (state === 'open' || state === 'in work'));

/** The last day that is known of a period whose last month is not over; null where it is. */
function lastDayWhereNotOver(months: readonly GivenMonth[], { until }: ReportPeriod): string | null {
  const last = months.find(({ month }) => month === until);
  return last && last.through !== null && Number(last.through.slice(8)) < last.daysInMonth ? last.through : null;
}
