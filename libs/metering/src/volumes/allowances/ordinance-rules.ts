import { DomainError } from '@rillbook/units/domain-error.js';

/** What an ordinance tells apart: dwellings, everything else, and landscapes that were there before it. */
export type LandscapeUse = 'residential' | 'non-residential' | 'existing';

/** One text of an ordinance: its factors and when it was in force. Laws change; a new text is a new entry. */
export interface OrdinanceRule {
  /** Whose ordinance it is. */
  readonly authority: 'California' | 'San Diego';
  /** First day in force; null where the day is not known. */
  readonly from: string | null;
  /** Last day in force; null where no later text is known. */
  readonly until: string | null;
  /** Evapotranspiration adjustment factor by use; null where the text has none. [–] */
  readonly etaf: Readonly<Record<LandscapeUse, number | null>>;
  /** Adjustment factor of special landscape areas, what they have on top of the plain factor included. [–] */
  readonly specialAreaFactor: number;
  /** Irrigation efficiency that a worksheet may not go below; null where it is set by method. [–] */
  readonly leastEfficiency: number | null;
  readonly source: string;
}

/** The later text of an authority stands after the earlier. */
export const ordinanceRules: readonly OrdinanceRule[] = [
  {
    authority: 'California',
    from: '2009-09-10',
    until: '2015-11-30',
    etaf: { residential: 0.7, 'non-residential': 0.7, existing: 0.8 },
    specialAreaFactor: 1,
    leastEfficiency: 0.71,
    source: '23 CCR 492.4 (2009 text), quoted by a municipal code; the days in force and the factor of existing landscapes from memory',
  },
  {
    authority: 'California',
    from: '2015-12-01',
    until: null,
    etaf: { residential: 0.55, 'non-residential': 0.45, existing: 0.8 },
    specialAreaFactor: 1,
    leastEfficiency: null,
    source: '23 CCR 492.4 (current text); the day in force and the factor of existing landscapes from memory',
  },
  {
    authority: 'San Diego',
    from: null,
    until: null,
    etaf: { residential: 0.42, 'non-residential': null, existing: null },
    specialAreaFactor: 1,
    leastEfficiency: null,
    source: 'City of San Diego code, landscape regulations; use and days in force not read, taken as residential',
  },
];

/**
 * Text of an ordinance that was in force on a day.
 *
 * @param authority - Whose ordinance. [code]
 * @param date - The day, YYYY-MM-DD. [code]
 * @returns The text, or null where none is known of that day. [–]
 * @throws {DomainError} `DATE_INVALID` when it is no day of the calendar so written.
 */
export function ordinanceRuleOn(authority: OrdinanceRule['authority'], date: string): OrdinanceRule | null {
  if (!isDay(date)) throw new DomainError('DATE_INVALID', { date });
  const inForce = (rule: OrdinanceRule) => (rule.from === null || rule.from <= date) && (rule.until === null || date <= rule.until);
  return ordinanceRules.find((rule) => rule.authority === authority && inForce(rule)) ?? null;
}

/**
 * Adjustment factor that a place's new landscapes have to keep: where the local text and the state's differ, the stricter.
 *
 * @param use - What the landscape belongs to. [code]
 * @param rules - Texts in force there. [–]
 * @returns The lowest factor for that use, or null where no text has one. [–]
 */
export function strictestFactor(use: LandscapeUse, rules: readonly OrdinanceRule[]): number | null {
  const factors = rules.flatMap(({ etaf }) => etaf[use] ?? []);
  return factors.length === 0 ? null : Math.min(...factors);
}

function isDay(date: string): boolean {
  const midnight = Date.parse(`${date}T00:00:00Z`);
  return Number.isFinite(midnight) && new Date(midnight).toISOString().slice(0, 10) === date;
}
