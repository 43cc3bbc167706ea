/** Days missing beyond this share of the month's ET weight make a volume absent. */
const LARGEST_FILLED_SHARE = 0.2;

/** One day of a volume: litres of the share that is known, that share (0 to 1), and the day's ET weight and need to fill by. */
export interface PartlyKnownDay {
  readonly litres: number;
  readonly knownShare: number;
  readonly etWeight: number;
  readonly neededLitres: number | null;
}

/** A volume over all days, with how much of it was filled in; or how much of the ET weight is missing, which was too much. */
export type FilledVolume =
  | { readonly litres: number; readonly filledLitres: number; readonly missingShare: number }
  | { readonly litres: null; readonly missingShare: number };

/**
 * A volume of which every day is known.
 *
 * @param litres - The volume of all days. [L]
 * @returns The volume, of which nothing was filled in. [L]
 */
export function nothingMissing(litres: number): FilledVolume {
  return { litres, filledLitres: 0, missingShare: 0 };
}

/**
 * Whether too much is missing of a month to fill it in.
 *
 * @param share - Share of the ET weight that is missing. [–]
 * @returns True beyond a fifth. [–]
 */
export function isTooMuchMissing(share: number): boolean {
  return share > LARGEST_FILLED_SHARE + 1e-9;
}

/**
 * A volume whose missing days are filled in, in proportion to need, else to days; absent where more than a fifth of the ET weight is missing.
 *
 * @param days - The days that the volume covers. [L] and [–], one per day
 * @returns The volume and what was filled in, or null where too much is missing. [L]
 */
export function fillMissingDays(days: readonly PartlyKnownDay[]): FilledVolume {
  const total = (of: (day: PartlyKnownDay) => number) => days.reduce((sum, day) => sum + of(day), 0);
  const weight = total(({ etWeight }) => etWeight);
  const missing =
    weight > 0 ? total((day) => (1 - day.knownShare) * day.etWeight) / weight : total((day) => 1 - day.knownShare) / days.length;
  const litres = total((day) => day.litres);
  if (missing <= 0) return nothingMissing(litres);
  if (isTooMuchMissing(missing) || days.length === 0) return { litres: null, missingShare: missing };
  const byNeed = days.every(({ neededLitres }) => neededLitres !== null) && total((day) => day.knownShare * (day.neededLitres ?? 0)) > 0;
  const measure = (day: PartlyKnownDay) => (byNeed ? (day.neededLitres ?? 0) : 1);
  const filledLitres = (litres * total((day) => (1 - day.knownShare) * measure(day))) / total((day) => day.knownShare * measure(day));
  return { litres: litres + filledLitres, filledLitres, missingShare: missing };
}
