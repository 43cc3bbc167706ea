import type { Language } from '../formats/numbers.js';
import type { UnitSystem } from '../formats/quantities.js';
import type { GivenPhoto, ReportBrand, ReportPeriod } from './report-input.js';

/** A number as it is shown, once: every output takes this value, or these letters. */
export interface Figure {
  /** unique in a page: metered, needed, month.2026-07.metered */
  readonly id: string;
  readonly label: string;
  /** rounded as it is shown, in `unit`; null where it is not known */
  readonly value: number | null;
  readonly unit: string;
  /** without its unit */
  readonly shown: string;
  /** why it is not known, in words */
  readonly reason: string | null;
}

/** A drawing with what it shows in words. */
export interface Drawn {
  readonly svg: string;
  readonly alt: string;
  /** the same for a narrow screen, where there is one */
  readonly phoneSvg?: string;
}

export interface ReportTable {
  readonly id: string;
  readonly title: string;
  /** the first heads the rows */
  readonly heads: readonly string[];
  readonly rows: readonly ReportRow[];
  /** why some of it is not known, each reason once */
  readonly notes: readonly string[];
}

export interface ReportRow {
  readonly label: string;
  readonly cells: readonly Figure[];
  readonly isTotal: boolean;
}

/** Something that was found, done or recommended, as a sentence. */
export interface ReportLine {
  readonly id: string;
  readonly says: string;
  readonly figures: readonly Figure[];
  readonly photos: readonly GivenPhoto[];
}

export interface ReportSection {
  readonly id: 'found' | 'done' | 'saved' | 'recommended';
  readonly title: string;
  readonly lines: readonly ReportLine[];
  /** said where there is no line */
  readonly none: string;
}

/** Twelve small gauges on one scale, and what its top and the longest bar of rain are. */
export interface YearOfGauges {
  readonly title: string;
  readonly scale: string;
  readonly months: readonly { readonly label: string; readonly drawn: Drawn }[];
}

/** All properties of a client together, where there are several. */
export interface ReportOfAll {
  readonly why: string;
  /** null where it is not known for every property */
  readonly gauge: Drawn | null;
  readonly year: YearOfGauges | null;
  readonly table: ReportTable;
  readonly sections: readonly ReportSection[];
}

/** How figures are made. */
export interface ReportMethod {
  readonly title: string;
  readonly paragraphs: readonly string[];
}

/** One property's pages. */
export interface ReportPage {
  readonly propertyId: string;
  readonly name: string;
  readonly where: string;
  readonly verdict: string;
  /** why, in a sentence or two */
  readonly why: string;
  readonly gauge: Drawn;
  readonly year: YearOfGauges;
  readonly figures: readonly Figure[];
  readonly sections: readonly ReportSection[];
  readonly tables: readonly ReportTable[];
  readonly ordinance: { readonly title: string; readonly says: string; readonly tables: readonly ReportTable[] } | null;
  /** how its saving was computed; no paragraph where none could be */
  readonly method: ReportMethod;
  readonly quality: { readonly title: string; readonly lines: readonly string[] };
}

/** The report: everything that its PDF, its page, its mail and its files show. */
export interface ReportModel {
  readonly format: 2;
  readonly language: Language;
  readonly units: UnitSystem;
  readonly currency: string;
  readonly brand: ReportBrand;
  readonly client: string;
  readonly period: ReportPeriod;
  readonly title: string;
  readonly periodInWords: string;
  readonly verdict: string;
  readonly note: { readonly title: string; readonly text: string } | null;
  readonly all: ReportOfAll | null;
  readonly pages: readonly ReportPage[];
  /** how the figures of every page are made */
  readonly method: ReportMethod;
  readonly footer: string;
  readonly pageOf: string;
  readonly dataVersion: string;
  readonly madeOn: string;
}
