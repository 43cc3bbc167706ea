import { radiansFromDegrees } from '@rillbook/units/angle.js';
import type { Quantity } from '@rillbook/units/quantity.js';

/** Where a station stands on the map and above the sea. */
export type StationPlace = {
  /** Latitude, north positive. [°] */
  readonly latitude: Quantity<'°'>;
  /** Longitude, east positive. [°] */
  readonly longitude: Quantity<'°'>;
  /** Height above sea level; null where nobody stated it. [m] */
  readonly elevation: Quantity<'m'> | null;
};

/** Mean radius of the earth (IUGG). [km] */
const EARTH_RADIUS_KM = 6371;

/** A neighbour stands no farther than this. Common practice, no source. [km] */
export const NEIGHBOUR_WITHIN_KM = 50;

/** Up to here a neighbour's rain counts even where the two have too few common days to say how far they differ: showers are small. An assumption. [km] */
export const RAIN_WITHIN_KM = 15;

/** A neighbour stands no higher or lower than this. Common practice, no source. [m] */
export const NEIGHBOUR_WITHIN_M_OF_HEIGHT = 300;

/**
 * Distance between two places along the ground, by the haversine formula.
 *
 * d = 2·R·asin √(sin²(Δφ/2) + cos φ₁·cos φ₂·sin²(Δλ/2)), R = 6371 km
 *
 * @param station - The one place. [any]
 * @param neighbour - The other. [any]
 * @returns Distance. [km]
 * @source Common practice: haversine on a sphere of the earth's mean radius.
 */
export function distanceKm(station: StationPlace, neighbour: StationPlace): number {
  const [phi1, phi2] = [radiansFromDegrees(station.latitude), radiansFromDegrees(neighbour.latitude)];
  const halfChord = (a: number, b: number) => Math.sin((b - a) / 2) ** 2;
  const east = halfChord(radiansFromDegrees(station.longitude), radiansFromDegrees(neighbour.longitude));
  const square = halfChord(phi1, phi2) + Math.cos(phi1) * Math.cos(phi2) * east;
  return 2 * EARTH_RADIUS_KM * Math.asin(Math.min(1, Math.sqrt(square)));
}

/**
 * The neighbour whose days may stand in for a station's: the nearest within 50 km and 300 m of height.
 *
 * A height that nobody stated cannot be compared: such a station has no neighbour and is none.
 *
 * @param station - The station that lacks days. [any]
 * @param others - The stations to choose from. [any]
 * @returns The nearest that qualifies with its distance, or null where none does. [km]
 * @source Common practice, no source, for both limits.
 */
export function neighbourStation<Other extends StationPlace>(
  station: StationPlace,
  others: readonly Other[],
): { readonly neighbour: Other; readonly distance: number } | null {
  const near = others
    .filter(({ elevation }) => isAsHigh(station.elevation, elevation))
    .map((neighbour) => ({ neighbour, distance: distanceKm(station, neighbour) }))
    .filter(({ distance }) => distance <= NEIGHBOUR_WITHIN_KM);
  return near.reduce<(typeof near)[number] | null>((best, one) => (best === null || one.distance < best.distance ? one : best), null);
}

function isAsHigh(one: number | null, other: number | null): boolean {
  return one !== null && other !== null && Math.abs(one - other) <= NEIGHBOUR_WITHIN_M_OF_HEIGHT;
}
