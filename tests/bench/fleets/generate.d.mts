/** A fleet's wish: seed, size, the share of properties with an hourly feed, and the kinds of fault (null for all). */
export interface FleetWish {
  readonly seed: number;
  readonly properties: number;
  readonly months: number;
  readonly hourly?: number;
  /** the share on which something goes wrong */
  readonly faulty?: number;
  readonly only?: readonly string[] | null;
}

/** The texts of a fleet: import files by name, what was wrong, the reference by month. */
export interface FleetTexts {
  readonly files: Readonly<Record<string, string>>;
  readonly truth: string;
  readonly gaps: string;
  readonly lastDay: string;
  readonly siteYears: number;
}

export function labelledFleet(wish: FleetWish): FleetTexts;
