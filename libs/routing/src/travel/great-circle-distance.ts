import { type Quantity } from '@rillbook/units/quantity.js';
import { metres } from '@rillbook/units/length.js';
import { degrees, radiansFromDegrees } from '@rillbook/units/angle.js';

/** Mean radius R1 of the earth: (2a + b) / 3 of the ellipsoid GRS 80, in m. */
const MEAN_EARTH_RADIUS_M = 6371008.7714;

/** A place on the earth. Latitude north positive, longitude east positive. [°] */
export interface Position {
  readonly latitude: number;
  readonly longitude: number;
}

/**
 * Distance over the ground as the crow flies, on a sphere (haversine formula).
 *
 * d = 2·R·asin(√(sin²(Δφ/2) + cos φ1·cos φ2·sin²(Δλ/2)))
 *
 * @param from - One place. [°]
 * @param to - The other. [°]
 * @returns The great-circle distance; 0 for the same place. [m]
 * @throws {DomainError} `ANGLE_OUT_OF_DOMAIN` when a coordinate is not finite.
 * @domain Any two places; a sphere differs from the ellipsoid by at most about 0.5 %.
 * @source Sinnott, R. W. (1984), Virtues of the Haversine, Sky and Telescope 68(2), 159; radius: Moritz, H. (2000), Geodetic Reference System 1980.
 */
export function greatCircleDistance(from: Position, to: Position): Quantity<'m'> {
  const latitude1 = radiansFromDegrees(degrees(from.latitude));
  const latitude2 = radiansFromDegrees(degrees(to.latitude));
  const longitudes = radiansFromDegrees(degrees(to.longitude - from.longitude));
  const half = Math.sin((latitude2 - latitude1) / 2) ** 2 + Math.cos(latitude1) * Math.cos(latitude2) * Math.sin(longitudes / 2) ** 2;
  return metres(2 * MEAN_EARTH_RADIUS_M * Math.asin(Math.min(1, Math.sqrt(half))));
}
