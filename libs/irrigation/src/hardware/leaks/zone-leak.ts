import { DomainError } from '@rillbook/units/domain-error.js';
import { finiteQuantity, type Quantity } from '@rillbook/units/quantity.js';
import { orificeFlow, SMOOTH_NOZZLE } from '../flow/orifice-flow.js';

/** An open end in a zone: its bore, the pressure behind it, and all that the zone's supply can bring. */
export interface OpenEnd {
  readonly bore: Quantity<'mm'>;
  readonly pressure: Quantity<'kPa'>;
  readonly supply: Quantity<'L/min'>;
}

/**
 * Leak rate of a valve that sticks open: the zone's own flow, for as long as it sticks.
 *
 * @param zoneFlow - Flow of the zone when it runs. [L/min]
 * @returns Leak rate. [L/min]
 * @throws {DomainError} `LEAK_OUT_OF_DOMAIN` when below zero or not finite.
 * @source Common practice, from memory: no published measurements were found.
 */
export function leakOfStuckValve(zoneFlow: Quantity<'L/min'>): Quantity<'L/min'> {
  if (!(zoneFlow >= 0)) throw new DomainError('LEAK_OUT_OF_DOMAIN', { zoneFlow });
  return finiteQuantity(zoneFlow, 'LEAK_OUT_OF_DOMAIN');
}

/**
 * Most that a cut drip line can lose while its zone runs: an upper bound, never a measurement.
 *
 * Q ≤ min(orifice of the whole bore at the regulated pressure with Cd 0.97, supply of the zone)
 *
 * @param line - Bore of the tubing, regulated pressure, supply of the zone. [L/min]
 * @returns Upper bound of the leak rate. [L/min]
 * @throws {DomainError} `ORIFICE_OUT_OF_DOMAIN` for bore or pressure; `LEAK_OUT_OF_DOMAIN` when the supply is below zero or not finite.
 * @source Orifice equation with the coefficient of a smooth nozzle, which an open end has at best; from memory: no published measurements of cut
 * lines were found.
 */
export function leakOfCutDripLine(line: OpenEnd): Quantity<'L/min'> {
  return mostThrough(line);
}

/**
 * Most that a broken-off head can lose beyond its own flow while its zone runs: an upper bound, never a measurement.
 *
 * Q ≤ max(0, min(orifice of the riser's whole bore with Cd 0.97, supply of the zone) − q of the head)
 *
 * @param riser - Bore of the riser, pressure behind it, supply of the zone. [L/min]
 * @param headFlow - Flow of the head when it was whole. [L/min]
 * @returns Upper bound of the water lost beyond what the head put out. [L/min]
 * @throws {DomainError} `ORIFICE_OUT_OF_DOMAIN` for bore or pressure; `LEAK_OUT_OF_DOMAIN` when a flow is below zero or not finite.
 * @source Orifice equation with the coefficient of a smooth nozzle; a repair firm states about 15 gpm for a sheared riser, which is weak evidence.
 */
export function leakOfBrokenHead(riser: OpenEnd, headFlow: Quantity<'L/min'>): Quantity<'L/min'> {
  if (!(headFlow >= 0)) throw new DomainError('LEAK_OUT_OF_DOMAIN', { headFlow });
  return finiteQuantity(Math.max(0, mostThrough(riser) - headFlow), 'LEAK_OUT_OF_DOMAIN');
}

// An end that is open over its whole bore has no sharp edge that narrows the stream: at most it is a smooth nozzle of that bore.
function mostThrough({ bore, pressure, supply }: OpenEnd): Quantity<'L/min'> {
  if (!(supply >= 0)) throw new DomainError('LEAK_OUT_OF_DOMAIN', { supply });
  return finiteQuantity(Math.min(orificeFlow(bore, pressure, SMOOTH_NOZZLE), supply), 'LEAK_OUT_OF_DOMAIN');
}
