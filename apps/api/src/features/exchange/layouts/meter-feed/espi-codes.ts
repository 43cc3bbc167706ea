import type { VolumeUnit } from '@rillbook/units/volume.js';

/** Code lists of ESPI (NAESB REQ.21), as far as a water meter needs them: what each number means. */
export const espiCodes = {
  serviceKind: { 0: 'electricity', 1: 'natural gas', 2: 'water' },
  commodity: {
    1: 'electricity secondary metered',
    7: 'natural gas',
    9: 'drinkable water',
    11: 'waste water',
    14: 'reclaimed water (irrigation)',
  },
  uom: {
    42: 'm3',
    119: 'ft3',
    128: 'US gal',
    130: 'imperial gal',
    134: 'L',
    125: 'm3/h',
    129: 'US gal/h',
    137: 'L/h',
    82: 'L/s',
  },
  kind: { 58: 'volume (fluid)', 155: 'volumetric flow' },
  accumulationBehaviour: { 1: 'bulk (register)', 4: 'delta over interval' },
  flowDirection: { 1: 'forward', 19: 'reverse' },
  quality: { 8: 'estimated from history', 9: 'linear interpolation', 10: 'failed a check' },
} as const;

/** A code list by its name. */
export type EspiList = keyof typeof espiCodes;

/** What a code means; the code itself where it is none of those that are known. */
export function meaningOf(list: EspiList, code: string): string {
  const meanings: Readonly<Record<string, string>> = espiCodes[list];
  return meanings[code] ?? code;
}

/** A code with its meaning, for a sentence: in the words of the standard, in whatever language the sentence is. */
export function codeWords(list: EspiList, code: string): string {
  const meaning = meaningOf(list, code);
  return meaning === code ? code : `${code} (${meaning})`;
}

/** A unit of volume in which a feed counts, as the product counts. */
export interface FeedUnit {
  readonly unit: VolumeUnit;
  /** How many of that unit are in one of the feed's. */
  readonly times: number;
}

/** Litres in an imperial gallon: exact by definition (Weights and Measures Act 1985, Schedule 1). It is no US gallon. */
const LITRES_PER_IMPERIAL_GALLON = 4.54609;

/** The units of volume by their code. */
export const feedUnits: Readonly<Record<string, FeedUnit>> = {
  42: { unit: 'm3', times: 1 },
  119: { unit: 'ft3', times: 1 },
  128: { unit: 'gal', times: 1 },
  130: { unit: 'L', times: LITRES_PER_IMPERIAL_GALLON },
  134: { unit: 'L', times: 1 },
};

/** The code lists' words that are used to judge a feed. */
export const WATER = { service: '2', commodities: ['9', '14'], volume: '58', bulk: '1', delta: '4', forward: '1' } as const;
/** Verdicts on a reading: estimated ones are kept and told, failed ones left out and told. */
export const QUALITY = { estimated: ['8', '9'], failed: '10' } as const;
