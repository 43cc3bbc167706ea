/** Where a picture was taken, as its camera wrote it. [degrees, WGS 84] */
export interface PictureTaken {
  readonly latitude: number;
  readonly longitude: number;
}

const MOST = { latitude: 90, longitude: 180 } as const;

/** The place in a JPEG; null where it names none, or one that cannot be, and for other kinds of picture. */
export async function placeOfPicture(bytes: ArrayBuffer): Promise<PictureTaken | null> {
  // Few wish to keep a photo's place: who does not need not load the reader. What it cannot read, what a camera broke, or a reader that cannot
  // be had, names no place: the photo itself is kept.
  const named = await import('exifr/dist/mini.esm.mjs').then(({ gps }) => gps(bytes)).catch(() => undefined);
  if (named === undefined) return null;
  const { latitude, longitude } = named;
  const isPossible = Math.abs(latitude) <= MOST.latitude && Math.abs(longitude) <= MOST.longitude;
  // A camera that had no fix writes noughts.
  return isPossible && !(latitude === 0 && longitude === 0) ? { latitude, longitude } : null;
}
