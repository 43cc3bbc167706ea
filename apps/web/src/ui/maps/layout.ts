import { textWidth } from '@rillbook/showing/gauge/drawing/glyph-widths.js';

export type MapMark = 'unexplained' | 'settings' | 'under' | 'near' | 'unknown';

export interface MapPlace {
  readonly id: string;
  readonly name: string;
  readonly latitude: number;
  readonly longitude: number;
  /** Its place in the list, from 1; null for one that the list does not number. */
  readonly rank: number | null;
  readonly mark: MapMark;
  /** From 0 to 1: a larger mark is more water. */
  readonly weight?: number;
}

export interface Extent {
  readonly width: number;
  readonly height: number;
}

export interface Placed {
  readonly place: MapPlace;
  readonly x: number;
  readonly y: number;
  readonly half: number;
  /** Where its number stands; null where it gave way. */
  readonly label: { readonly x: number; readonly y: number } | null;
}

const MARGIN = 20;
/** Room at the foot for the scale bar. */
const FOOT = 28;
/** A mean radius is enough for a sketch of a few miles. */
const EARTH_RADIUS_M = 6_371_000;
const LEAST_SPAN_M = 400;

interface Projection {
  readonly x: (longitude: number) => number;
  readonly y: (latitude: number) => number;
  readonly metresPerUnit: number;
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** Longitudes as one run of numbers, so that places on both sides of the date line are neighbours. */
const unrolled = (longitude: number, near: number): number => longitude + 360 * Math.round((near - longitude) / 360);

/** East and north as they are on the ground, filling the drawing as far as both allow. */
export function projection(places: readonly MapPlace[], { width, height }: Extent): Projection {
  const near = places[0]?.longitude ?? 0;
  const [lats, longs] = [places.map(({ latitude }) => latitude), places.map(({ longitude }) => unrolled(longitude, near))];
  const middle = { latitude: (Math.min(...lats) + Math.max(...lats)) / 2, longitude: (Math.min(...longs) + Math.max(...longs)) / 2 };
  const metresPerDegree = radians(1) * EARTH_RADIUS_M;
  const east = metresPerDegree * Math.max(0.01, Math.cos(radians(middle.latitude)));
  const across = Math.max(LEAST_SPAN_M, (Math.max(...longs) - Math.min(...longs)) * east);
  const up = Math.max(LEAST_SPAN_M, (Math.max(...lats) - Math.min(...lats)) * metresPerDegree);
  const metresPerUnit = Math.max(across / (width - 2 * MARGIN), up / (height - 2 * MARGIN - FOOT));
  return {
    metresPerUnit,
    x: (longitude) => width / 2 + ((unrolled(longitude, near) - middle.longitude) * east) / metresPerUnit,
    y: (latitude) => (height - FOOT) / 2 - ((latitude - middle.latitude) * metresPerDegree) / metresPerUnit,
  };
}

const HALF: Readonly<Record<MapMark, number>> = { unexplained: 6.5, settings: 6.5, under: 7, near: 3.5, unknown: 6 };
export const halfOf = ({ mark, weight = 0 }: MapPlace): number =>
  HALF[mark] + (mark === 'unexplained' || mark === 'settings' ? 4.5 * Math.min(1, Math.max(0, weight)) : 0);

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const meets = (one: Box, other: Box): boolean =>
  one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;
export const LABEL_SIZE = 13;

const labelBox = (x: number, y: number, words: string): Box => ({
  left: x,
  right: x + textWidth(words, LABEL_SIZE, true),
  top: y - 10,
  bottom: y + 3,
});

/** The number's places in the order they are tried: right, left, above, below. */
function candidates({ x, y, half }: { x: number; y: number; half: number }, words: string): { x: number; y: number }[] {
  const width = textWidth(words, LABEL_SIZE, true);
  return [
    { x: x + half + 4, y: y + 5 },
    { x: x - half - 4 - width, y: y + 5 },
    { x: x - width / 2, y: y - half - 4 },
    { x: x - width / 2, y: y + half + 13 },
  ];
}

/** Where marks and numbers stand. Marks never move; a number that finds no room gives way, the last in the list first. */
export function mapLayout(places: readonly MapPlace[], extent: Extent): Placed[] {
  const { x, y } = projection(places, extent);
  const spots = places.map((place) => ({ place, x: x(place.longitude), y: y(place.latitude), half: halfOf(place) }));
  const taken: Box[] = spots.map((spot) => ({
    left: spot.x - spot.half,
    right: spot.x + spot.half,
    top: spot.y - spot.half,
    bottom: spot.y + spot.half,
  }));
  const inside = (box: Box): boolean => box.left >= 0 && box.right <= extent.width && box.top >= 0 && box.bottom <= extent.height - FOOT;
  const labels = new Map<string, { x: number; y: number }>();
  const numbered = spots.filter(({ place }) => place.rank !== null).sort((one, other) => (one.place.rank ?? 0) - (other.place.rank ?? 0));
  for (const spot of numbered) {
    const words = String(spot.place.rank);
    const free = candidates(spot, words).find((at) => {
      const box = labelBox(at.x, at.y, words);
      return inside(box) && !taken.some((other) => meets(box, other));
    });
    if (!free) continue;
    labels.set(spot.place.id, free);
    taken.push(labelBox(free.x, free.y, words));
  }
  return spots.map((spot) => ({ ...spot, label: labels.get(spot.place.id) ?? null }));
}

/** A round length that is about a quarter of the drawing, in metres for a person of one system. */
export function scaleBar(
  metresPerUnit: number,
  width: number,
  metresPerBig: number,
  metresPerSmall: number,
): { metres: number; count: number; isBig: boolean } {
  const room = (width / 3) * metresPerUnit;
  const isBig = room >= metresPerBig / 2;
  const unit = isBig ? metresPerBig : metresPerSmall;
  const power = 10 ** Math.floor(Math.log10(room / unit));
  const count = ([5, 2, 1].find((times) => times * power * unit <= room) ?? 1) * power;
  return { metres: count * unit, count, isBig };
}
