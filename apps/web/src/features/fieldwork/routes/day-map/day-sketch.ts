import { projection } from '../../../../ui/maps/layout.js';

/** A place of a day: where it is, and its number in the order; null for where the day starts. */
export interface DayPlace {
  readonly number: number | null;
  readonly latitude: number;
  readonly longitude: number;
}

export interface SketchedPlace {
  readonly number: number | null;
  readonly x: number;
  readonly y: number;
}

/** Half of a mark, and the least way between the middles of two. */
export const HALF = 11;
const APART = 2 * HALF + 2;

/**
 * Where the places of a day stand on a sketch, north up. Places that would cover each other move apart to the right, the later one: a sketch
 * shows the order and the side of town, not the door.
 */
export function daySketch(
  places: readonly DayPlace[],
  extent: { readonly width: number; readonly height: number },
): readonly SketchedPlace[] {
  const { x, y } = projection(
    places.map(({ latitude, longitude }, at) => ({ id: String(at), name: '', latitude, longitude, rank: null, mark: 'near' })),
    extent,
  );
  const placed: SketchedPlace[] = [];
  for (const { number, latitude, longitude } of places) {
    const spot = { x: x(longitude), y: y(latitude) };
    const covers = (): boolean => placed.some((other) => Math.hypot(other.x - spot.x, other.y - spot.y) < APART);
    for (let step = 0; covers() && step < places.length; step += 1) spot.x += APART;
    placed.push({ number, ...spot });
  }
  return placed;
}
