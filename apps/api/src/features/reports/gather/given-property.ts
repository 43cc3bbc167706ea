import { plantFactor } from '@rillbook/agronomy/plants/plant-factor.js';
import type { GivenAllowance, GivenFinding, GivenZone } from '@rillbook/showing/report/report-input.js';
import type { ordersOfProperty } from '../../fieldwork/orders/lists/orders-of-property.loader.js';
import type { findingsOfProperty } from '../../findings/finding.loader.js';
import { CLEARED } from '../../findings/opening/open-findings.service.js';
import type { controllersOfProperty } from '../../portfolio/controllers/controllers-of-property.loader.js';
import type { propertiesOfClient } from '../../portfolio/properties/properties-of-client.loader.js';
import type { zonesOfProperty } from '../../portfolio/zones/zones-of-property.loader.js';

type Property = Awaited<ReturnType<ReturnType<typeof propertiesOfClient.of>['load']>>[number];
type Finding = Awaited<ReturnType<ReturnType<typeof findingsOfProperty.of>['load']>>[number];
type Controller = Awaited<ReturnType<ReturnType<typeof controllersOfProperty.of>['load']>>[number];
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

/** Kinds whose litres are water that did not come. */
const TOO_LITTLE = new Set(['under-programmed', 'not delivering']);

/** A zone that passes less than it did lacks water; one that passes more loses it. */
const isTooLittle = ({ kind, says }: Finding): boolean =>
  TOO_LITTLE.has(kind) || (kind === 'zone flow changed' && !(Number(says.details['change']) > 0));

/** Orders that were made of findings. */
type Order = Awaited<ReturnType<ReturnType<typeof ordersOfProperty.of>['load']>>[number];

/** When a report's period ended, and what was known of work by then. */
export interface AtTheEnd {
  readonly endedAt: Date;
  readonly orders: readonly Order[];
}

/** How a finding stood when the period ended, where it was decided or cleared after that. */
function stateThen({ id, state, decidedAt, clearedAt }: Finding, { endedAt, orders }: AtTheEnd): { stateThen?: string } {
  if (state !== 'resolved') return {};
  const settledAt = decidedAt ?? clearedAt;
  if (settledAt === null || settledAt < endedAt) return {};
  return { stateThen: orders.some(({ findingId, createdAt }) => findingId === id && createdAt < endedAt) ? 'in work' : 'open' };
}

/** What a property has, by name. */
export interface Parts {
  readonly zones: readonly Zone[];
  readonly controllers: readonly Controller[];
}

/** Which of several controllers a finding is of: where there is one, its name says nothing. */
function controllerOf({ says }: Finding, controllers: readonly Controller[]): { controller?: string } {
  const found = controllers.length > 1 ? controllers.find(({ id }) => id === says.details['controllerId']) : undefined;
  return found ? { controller: found.name } : {};
}

/** What one zone shows by itself. Its details name several where usage does not tell which of them it is. */
const OF_ONE_ZONE = new Set(['zone flow changed', 'not delivering zone']);

/** Names of the zone that a finding is of, or of those of which it is one: the likeliest first, as its own sentence says it. */
function zonesOf({ zoneId, says }: Finding, zones: readonly Zone[]): string[] {
  const likely = OF_ONE_ZONE.has(says.code) ? says.details['zoneIds'] : null;
  const ids: readonly unknown[] = zoneId === null && Array.isArray(likely) ? likely : [zoneId];
  return ids.flatMap((id) => zones.find((zone) => zone.id === id)?.name ?? []);
}

/** A finding as a report takes it, with the names of the zone and the controller that it is of. */
export function givenFinding(finding: Finding, { zones, controllers }: Parts, end: AtTheEnd): GivenFinding {
  const { id, kind, state, fromOn, untilOn, litres, money, resolvedWith } = finding;
  return {
    id,
    kind,
    state,
    zones: zonesOf(finding, zones),
    fromOn,
    untilOn,
    litres,
    money,
    isTooLittle: isTooLittle(finding),
    resolvedWith: resolvedWith === CLEARED ? null : resolvedWith,
    ...stateThen(finding, end),
    ...controllerOf(finding, controllers),
  };
}
