import type { Language } from '../formats/numbers.js';
import type { UnitSystem } from '../formats/quantities.js';

/** A volume of a month, in litres; null with the code of its reason. */
export interface GivenVolume {
  readonly litres: number | null;
  readonly sdLitres: number | null;
  readonly estimatedShare: number;
  readonly reason: string | null;
}

/** A gap of a month. */
export interface GivenGap {
  readonly litres: number | null;
  readonly sdLitres: number | null;
  readonly money: number | null;
}

export type GivenVolumes = Readonly<Record<'allowed' | 'needed' | 'programmed' | 'metered', GivenVolume>>;
export type GapName = 'landscapeGap' | 'settingsGap' | 'unexplainedGap' | 'aboveNeed' | 'aboveAllowed';
export type GivenGaps = Readonly<Record<GapName, GivenGap>>;

/** One month's account of a property. */
export interface GivenMonth extends GivenVolumes, GivenGaps {
  /** YYYY-MM */
  readonly month: string;
  readonly daysCovered: number;
  readonly daysInMonth: number;
  /** the last day that the volumes cover; null where no day is complete [YYYY-MM-DD] */
  readonly through: string | null;
  readonly etoMm: number | null;
  readonly rainMm: number | null;
  /** need by zone [L]; `isCounted` where it is part of the property's own */
  readonly zones: readonly { readonly zoneId: string; readonly neededLitres: number | null; readonly isCounted: boolean }[];
}

export interface GivenFinding {
  readonly id: string;
  readonly kind: string;
  readonly state: string;
  /** its state when the period ended, where it has changed since; absent where it is as it was */
  readonly stateThen?: string;
  /** name of the zone that it is of; several where it is one of them, the likeliest first; none where it is of the whole property or a meter */
  readonly zones: readonly string[];
  /** name of the controller that it is of, where the property has several; absent where it has one, or it is of none */
  readonly controller?: string;
  readonly fromOn: string | null;
  readonly untilOn: string | null;
  /** of a month, at the rate last seen [L] */
  readonly litres: number | null;
  /** of a month [money] */
  readonly money: number | null;
  /** whether its litres are water that lacks, not water too much: putting it right saves none */
  readonly isTooLittle: boolean;
  readonly resolvedWith: string | null;
}

/** A picture as it is shown: its bytes as a data address, and what is on it. */
export interface GivenPhoto {
  readonly dataUrl: string;
  readonly alt: string;
  readonly takenOn: string;
}

/** Of what the product itself wrote an order's words: of the finding that it was made for, or of the settings of a season. */
export type WordsOfOrder = ({ readonly by: 'finding' } & Pick<GivenFinding, 'kind' | 'zones' | 'controller'>) | { readonly by: 'season' };

/** A work order that was done in the period, or that waits. */
export interface GivenWork {
  readonly id: string;
  readonly kind: string;
  readonly state: string;
  readonly what: string;
  /** absent where somebody wrote `what` */
  readonly wordsOf?: WordsOfOrder;
  readonly doneOn: string | null;
  readonly doneNote: string | null;
  /** labour and parts; null where they are not known [money] */
  readonly cost: number | null;
  readonly photos: readonly GivenPhoto[];
}

export interface GivenZone {
  readonly id: string;
  readonly name: string;
  readonly areaM2: number;
  readonly plantFactor: number;
  readonly plants: string | null;
  readonly method: string;
}

/** What limits a property's water. */
export type GivenAllowance =
  | { readonly from: 'ordinance'; readonly etaf: number | null; readonly specialLandscapeAreaM2: number }
  | { readonly from: 'contract' };

export interface GivenProperty {
  readonly id: string;
  readonly name: string;
  readonly where: string;
  /** oldest first, up to the end of the period */
  readonly months: readonly GivenMonth[];
  /** month in which work that saves water was first done; null where none was [YYYY-MM] */
  readonly firstWork: string | null;
  /** what a litre less saved in the period; null where no price is known [money/L] */
  readonly pricePerLitre: number | null;
  readonly findings: readonly GivenFinding[];
  readonly work: readonly GivenWork[];
  readonly allowance: GivenAllowance | null;
  readonly zones: readonly GivenZone[];
}

/** First and last month, YYYY-MM. */
export interface ReportPeriod {
  readonly from: string;
  readonly until: string;
}

/** Who gives the report: name, colours and logo of the office. */
export interface ReportBrand {
  readonly name: string;
  /** #rrggbb, or null for the report's own */
  readonly colour: string | null;
  readonly logo: string | null;
  readonly contact: string | null;
}

/** Everything that a report is written from, in SI units. */
export interface ReportInput {
  readonly brand: ReportBrand;
  readonly client: string;
  readonly period: ReportPeriod;
  readonly language: Language;
  readonly units: UnitSystem;
  readonly currency: string;
  readonly timeZone: string;
  /** how sure a gap must be before it counts [–] */
  readonly confidence: number;
  readonly note: string | null;
  readonly madeOn: string;
  /** fingerprint of the data that it was made from */
  readonly dataVersion: string;
  readonly properties: readonly GivenProperty[];
}
