export type Mark = 'allowed' | 'needed' | 'programmed' | 'metered';
export type GapKind = 'landscape' | 'settings' | 'unexplained';
export type GaugeSize = 'row' | 'month' | 'phone' | 'large' | 'print';

/** From the ground of the account to its top; the order never follows value. */
export const MARKS: readonly Mark[] = ['allowed', 'needed', 'programmed', 'metered'];

/** The three steps in their fixed order, each from one mark to the next. */
export const GAPS: readonly { readonly kind: GapKind; readonly from: Mark; readonly to: Mark }[] = [
  { kind: 'landscape', from: 'allowed', to: 'needed' },
  { kind: 'settings', from: 'needed', to: 'programmed' },
  { kind: 'unexplained', from: 'programmed', to: 'metered' },
];

/** A volume in the unit that is shown, or null with the reason in words. */
export interface GaugeVolume {
  readonly value: number | null;
  /** One standard uncertainty. */
  readonly sd?: number | null;
  readonly missing?: string;
  /** Part of it was filled in: the mark is dashed. */
  readonly estimated?: boolean;
}

/** A gap with its own uncertainty: the drawing never adds those of the volumes, which share their inputs. */
export interface GaugeGap {
  readonly value: number | null;
  readonly sd?: number | null;
  /** Within what can be measured, as the account judged it. */
  readonly within?: boolean;
  readonly money?: number | null;
  readonly missing?: string;
}

/** What is drawn: numbers in one unit. */
export interface GaugeNumbers {
  readonly volumes: Readonly<Record<Mark, GaugeVolume>>;
  readonly gaps: Readonly<Record<GapKind, GaugeGap>>;
  /** What the three gaps add up to. */
  readonly aboveAllowed: GaugeGap;
  /** The plain question: shown where a gap is not known, so that a client without settings still learns it. */
  readonly aboveNeed?: GaugeGap;
  /** Volumes are written to whole multiples of it where four figures would be finer: nothing finer was measured. */
  readonly leastStep?: number;
  /** Top of the scale, to share it between gauges. */
  readonly scaleTop?: number;
  /** Size `month`: a bar that hangs from the top, with the depth that fills it. */
  readonly rain?: { readonly depth: number; readonly full: number };
}

interface Sides {
  readonly above: string;
  readonly below: string;
}

/** Every word of the drawing, in one language; none is markup. */
export interface GaugeWords {
  readonly unit: string;
  readonly thousandUnit: string;
  readonly marks: Readonly<Record<Mark, string>>;
  readonly gaps: Readonly<Record<GapKind, string>>;
  readonly compare: Readonly<Record<GapKind | 'aboveAllowed' | 'aboveNeed', Sides>>;
  readonly remedy: Readonly<Record<GapKind, Sides>>;
  readonly missing: string;
  readonly estimated: string;
  readonly within: (sd: string | null) => string;
  readonly waitsFor: (gap: string, mark: string) => string;
  readonly notKnown: (gap: string) => string;
  readonly about: (money: string) => string;
  readonly number: (value: number, decimals: number) => string;
  readonly money: (value: number) => string;
}

export const isKnown = (value: number | null | undefined): value is number => typeof value === 'number' && Number.isFinite(value);
