import { DomainError } from '@rillbook/units/domain-error.js';
import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';
import { precipitationRateFromFlow } from './precipitation-rate.js';

/** Height of an equilateral triangle over its side: 0.866. */
const TRIANGLE_HEIGHT = Math.sqrt(3) / 2;

const FULL_CIRCLE_DEGREES = 360;

/**
 * Area that each head of a pattern waters, whatever the pattern.
 *
 * A = head spacing · row spacing. In a triangular pattern the row spacing already holds the 0.866: it is never applied again.
 *
 * @param headSpacing - Distance between heads along a row. [m]
 * @param rowSpacing - Distance between rows, measured square to them. [m]
 * @returns Area of one head. [m2]
 * @throws {DomainError} `SPACING_OUT_OF_DOMAIN` when a spacing is not above zero or not finite.
 * @source Geometry.
 */
export function areaPerHead(headSpacing: Quantity<'m'>, rowSpacing: Quantity<'m'>): Quantity<'m2'> {
  const area = headSpacing * rowSpacing;
  if (!(headSpacing > 0 && rowSpacing > 0 && Number.isFinite(area)))
    throw new DomainError('SPACING_OUT_OF_DOMAIN', { headSpacing, rowSpacing });
  return area as Quantity<'m2'>;
}

/**
 * Row spacing of an equilateral triangular pattern.
 *
 * row spacing = √3/2 · head spacing = 0.866 · head spacing
 *
 * @param headSpacing - Distance between heads. [m]
 * @returns Distance between rows, measured square to them. [m]
 * @throws {DomainError} `SPACING_OUT_OF_DOMAIN` when not above zero or not finite.
 * @source Geometry.
 */
export function triangularRowSpacing(headSpacing: Quantity<'m'>): Quantity<'m'> {
  if (!(headSpacing > 0)) throw new DomainError('SPACING_OUT_OF_DOMAIN', { headSpacing });
  return finiteQuantity(TRIANGLE_HEIGHT * headSpacing, 'SPACING_OUT_OF_DOMAIN');
}

/**
 * Flow that a head would have if it threw a full circle.
 *
 * Q(360°) = Q · 360 / arc
 *
 * @param flow - Flow of the head. [L/min]
 * @param arc - Arc that it throws. [°]
 * @returns Flow for the full circle, by which the area per head is watered. [L/min]
 * @throws {DomainError} `ARC_OUT_OF_DOMAIN` when the arc is not within above 0 to 360, or the flow is below zero or not finite.
 * @source Geometry of matched heads.
 */
export function fullCircleFlow(flow: Quantity<'L/min'>, arc: Quantity<'°'>): Quantity<'L/min'> {
  if (!(arc > 0 && arc <= FULL_CIRCLE_DEGREES && flow >= 0)) throw new DomainError('ARC_OUT_OF_DOMAIN', { flow, arc });
  return finiteQuantity((flow * FULL_CIRCLE_DEGREES) / arc, 'ARC_OUT_OF_DOMAIN');
}

/**
 * Precipitation rate of a pattern of heads (head spacing method).
 *
 * PR = 60 · Q / (head spacing · row spacing); in US units 96.25 · Q [gpm] / (S [ft] · L [ft])
 *
 * @param flow - Flow of one head for the full circle. [L/min]
 * @param headSpacing - Distance between heads along a row. [m]
 * @param rowSpacing - Distance between rows, measured square to them. [m]
 * @returns Mean rate within the pattern. [mm/h]
 * @throws {DomainError} `SPACING_OUT_OF_DOMAIN` for the spacings; `PRECIPITATION_RATE_OUT_OF_DOMAIN` when the flow is below zero or not finite.
 * @source Extension texts on sprinkler spacing; constant by arithmetic.
 * @example 6 gpm at 25 by 30 ft // 19.56 mm/h, 0.77 in/h
 */
export function precipitationRateOfPattern(
  flow: Quantity<'L/min'>,
  headSpacing: Quantity<'m'>,
  rowSpacing: Quantity<'m'>,
): Quantity<'mm/h'> {
  return precipitationRateFromFlow(flow, areaPerHead(headSpacing, rowSpacing));
}
