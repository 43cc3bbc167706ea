import { DomainError } from '@rillbook/units/domain-error.js';

/** A plant's part of a zone and how far it has come; a share of 1 is established. */
export type PartOfCover = {
  /** Share of the zone's cover, or null when not known. [%] */
  readonly coverPercent: number | null;
  /** Share of its establishment period that has passed. [–] */
  readonly share: number;
};

/**
 * Establishment of a zone of several plants: the mean of their shares by cover, so that one new tree does not make an old bed young.
 *
 * A plant without cover counts as the mean of those that have one; where none has, all count the same.
 *
 * @param parts - The plants of the zone. [–], one per plant
 * @returns Share of the establishment of the whole; 1 where there is no plant. [–]
 * @throws {DomainError} `COVER_OUT_OF_DOMAIN` when a cover is not within 0 … 100 or a share not within 0 … 1.
 * @source Common practice, no source: zones are watered as what covers most of them.
 */
export function establishmentOfCover(parts: readonly PartOfCover[]): number {
  for (const { coverPercent, share } of parts) {
    const good = (coverPercent === null || (coverPercent >= 0 && coverPercent <= 100)) && share >= 0 && share <= 1;
    if (!good) throw new DomainError('COVER_OUT_OF_DOMAIN', { coverPercent, share });
  }
  const stated = parts.flatMap(({ coverPercent }) => (coverPercent === null ? [] : [coverPercent]));
  const usual = stated.length === 0 ? 1 : stated.reduce((sum, cover) => sum + cover, 0) / stated.length;
  const weight = (part: PartOfCover) => part.coverPercent ?? usual;
  const whole = parts.reduce((sum, part) => sum + weight(part), 0);
  return whole === 0 ? 1 : parts.reduce((sum, part) => sum + weight(part) * part.share, 0) / whole;
}
