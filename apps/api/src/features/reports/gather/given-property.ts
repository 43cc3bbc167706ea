import { plantFactor } from '@rillbook/agronomy/plants/plant-factor.js';
import type { GivenAllowance, GivenFinding, GivenZone } from '@rillbook/showing/report/report-input.js';
import type { findingsOfProperty } from '../../findings/finding.loader.js';
import { CLEARED } from '../../findings/opening/open-findings.service.js';
import type { propertiesOfClient } from '../../portfolio/properties/properties-of-client.loader.js';
import type { zonesOfProperty } from '../../portfolio/zones/zones-of-property.loader.js';

type Property = Awaited<ReturnType<ReturnType<typeof propertiesOfClient.of>['load']>>[number];
type Finding = Awaited<ReturnType<ReturnType<typeof findingsOfProperty.of>['load']>>[number];
type Zone = Awaited<ReturnType<ReturnType<typeof zonesOfProperty.of>['load']>>[number];

/** What limits a property's water, as a report takes it; null where nothing does. */
export function givenAllowance({ allowanceFrom, allowanceEtaf, specialLandscapeAreaM2 }: Property): GivenAllowance | null {
  if (allowanceFrom === null) return null;
  if (allowanceFrom === 'contract') return { from: 'contract' };
  return { from: 'ordinance', etaf: allowanceEtaf, specialLandscapeAreaM2: specialLandscapeAreaM2 ?? 0 };
}

/** A zone as a report takes it: its plants grown, with the factor that its account takes. */
export const givenZone = ({ id, name, areaM2, plantFactor: stated, waterNeed, plants, method }: Zone): GivenZone => ({
  id,
  name,
  areaM2,
  plantFactor: plantFactor(stated, waterNeed, plants).plantFactor,
  plants,
  method,
});

/** A finding as a report takes it, with the names of the zone or zones that it is of. */
export function givenFinding(
  { id, kind, state, fromOn, untilOn, litres, money, resolvedWith, zoneId }: Finding,
  zones: readonly Zone[],
): GivenFinding {
  const names = zones.filter((zone) => zone.id === zoneId).map(({ name }) => name);
  return { id, kind, state, zones: names, fromOn, untilOn, litres, money, resolvedWith: resolvedWith === CLEARED ? null : resolvedWith };
}
