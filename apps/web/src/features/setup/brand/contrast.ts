const COLOUR = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i;

/** Least contrast of a line or of large letters (WCAG 2.2, 1.4.11). [–] */
export const LEAST_CONTRAST = 3;

/** Contrast of a colour with white paper (WCAG 2.2); null where it is no colour. [–] */
export function contrastOnWhite(colour: string): number | null {
  const found = COLOUR.exec(colour);
  if (!found) return null;
  const [red, green, blue] = found.slice(1).map((hex) => {
    const share = Number.parseInt(hex, 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 1.05 / (0.2126 * red + 0.7152 * green + 0.0722 * blue + 0.05);
}
