import { type Absence, absence } from '../volumes/absence.js';
import { absent, type Figure, sumOfFigures } from '../volumes/figure.js';
import type { Allowance } from './account-input.js';
import { allowedOfZones } from './allowed-of-zones.js';
import type { ComputedZone } from './account-lines.js';
import type { CoveredMonth } from './needed/covered-month.js';
import type { MeteredOfMeter } from './metered-of-meter.js';
import type { MeterVolumes, Volumes } from './month-account.js';
import { volumesOfScope } from './volumes-of-scope.js';

/** A meter's metered water by the meter's id, and the zones of the property. */
export interface PropertyFigures {
  readonly zones: readonly ComputedZone[];
  readonly meters: readonly (readonly [string, MeteredOfMeter])[];
  readonly allowance: Allowance | null;
  readonly month: CoveredMonth;
}

/**
 * The property's volumes: zones that enter the identity, all meters, and the whole allowance.
 *
 * Zones that are not assigned to one of several meters give need and program and leave the gaps with the metered volume absent; so does a
 * meter without zones, whose water would be compared with other zones' need.
 *
 * @param property - Zones, meters, allowance and the covered days. [L]
 * @returns Volumes and gaps. [L]
 * @throws {DomainError} As `allowedOfZones`.
 */
export function propertyVolumes(property: PropertyFigures): Volumes {
  const zones = property.zones.filter(({ scope }) => scope === 'metered' || scope === 'unassigned');
  const notAssigned = notAssignedZones(property);
  const bare = property.meters.filter(([id]) => zones.length > 0 && !zones.some(({ meterId }) => meterId === id)).map(([id]) => id);
  const withoutZones = bare.length > 0 ? absence('meter-without-zones', { meters: bare }) : null;
  const byArea = property.allowance?.from === 'ordinance';
  return volumesOfScope({
    allowed: allowedOfZones(
      zones.map(({ zone }) => zone),
      { allowance: property.allowance, specialLandscapeAreaM2: specialAreaOf(property, zones) },
      property.month,
    ),
    ...needAndProgram(zones),
    metered:
      property.meters.length === 0
        ? absent(absence('no-meter'))
        : sumOfFigures(
            property.meters.map(([id, { figure }]) => [id, figure]),
            'meters',
          ),
    blocked: notAssigned ?? withoutZones,
    blockedAllowed: notAssigned ?? (byArea ? withoutZones : null),
  });
}

/**
 * One meter's volumes: its zones, its water and its share of an ordinance's allowance; a contract is for the property as a whole.
 *
 * @param meterId - The meter. [code]
 * @param metered - Its metered water. [L]
 * @param property - Zones, meters, allowance and the covered days. [L]
 * @param whole - The property's volumes, which are the meter's where it is the only one and its water is known. [L]
 * @returns Volumes and gaps. [L]
 * @throws {DomainError} As `allowedOfZones`.
 */
export function meterVolumes(meterId: string, metered: MeteredOfMeter, property: PropertyFigures, whole: Volumes): MeterVolumes {
  if (property.meters.length === 1 && metered.figure.value) return { ...whole, meterId, meteredThrough: metered.meteredThrough };
  const zones = property.zones.filter((zone) => zone.scope === 'metered' && zone.meterId === meterId);
  const notAssigned = notAssignedZones(property);
  const blockedFigure = notAssigned ? absent(notAssigned) : null;
  const volumes = volumesOfScope({
    allowed: blockedFigure ?? allowedOfMeter(zones, property),
    ...(blockedFigure ? { needed: blockedFigure, programmed: blockedFigure, zoneGaps: [] } : needAndProgram(zones)),
    metered: metered.figure,
    blocked: notAssigned,
    blockedAllowed: notAssigned,
  });
  return { ...volumes, meterId, meteredThrough: metered.meteredThrough };
}

// In proportion to area, and never more than there is: the meters' shares add up to the property's.
function specialAreaOf(property: PropertyFigures, zones: readonly ComputedZone[]): number {
  if (property.allowance?.from !== 'ordinance') return 0;
  const areaOf = (some: readonly ComputedZone[]) => some.reduce((sum, { zone }) => sum + zone.areaM2, 0);
  const whole = areaOf(property.zones.filter(({ scope }) => scope === 'metered' || scope === 'unassigned'));
  return whole > 0 ? Math.min(property.allowance.specialLandscapeAreaM2, whole) * (areaOf(zones) / whole) : 0;
}

function needAndProgram(zones: readonly ComputedZone[]) {
  const noZones = absent(absence('no-zones'));
  const sum = (of: (zone: ComputedZone) => Figure) =>
    zones.length === 0
      ? noZones
      : sumOfFigures(
          zones.map((each) => [each.zone.id, of(each)]),
          'zones',
        );
  return {
    needed: sum(({ needed }) => needed.figure),
    programmed: sum(({ programmed }) => programmed.figure),
    zoneGaps: zones.map(({ settingsGap }) => settingsGap).filter((gap) => gap !== null),
  };
}

function allowedOfMeter(zones: readonly ComputedZone[], property: PropertyFigures): Figure {
  const { allowance, meters, month } = property;
  if (allowance?.from === 'contract' && meters.length > 1) return absent(absence('allowance-is-for-the-property'));
  const specialLandscapeAreaM2 = specialAreaOf(property, zones);
  return allowedOfZones(
    zones.map(({ zone }) => zone),
    { allowance, specialLandscapeAreaM2 },
    month,
  );
}

function notAssignedZones({ zones, meters }: PropertyFigures): Absence | null {
  const unassigned = zones.filter(({ scope }) => scope === 'unassigned').map(({ zone }) => zone.id);
  return unassigned.length > 0 && meters.length > 0 ? absence('zones-not-assigned', { zones: unassigned }) : null;
}
