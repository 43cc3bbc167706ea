import type { PlanGround } from '@rillbook/irrigation/at-the-controller/change-from-found.js';
import { stationsWithoutZone } from '@rillbook/irrigation/at-the-controller/stations-without-zone.js';
import type { PlanInput, ZoneToPlan } from '@rillbook/irrigation/planning/plan-input.js';
import type { WateringRule } from '@rillbook/irrigation/rules/watering-rule.js';
import type { Program } from '@rillbook/irrigation/settings/settings-fact.js';
import type { AccountZone } from '@rillbook/metering/account/account-input.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { organizations } from '../../../platform/identity/organizations/organization.repository.js';
import { todayOf } from '../../../platform/jobs/clock.js';
import { needOfMonth } from '../../accounts/needs/need-of-month.service.js';
import type { controllerOfId } from '../../portfolio/controllers/controller.loader.js';
import { metersOfProperty } from '../../portfolio/meters/meters-of-property.loader.js';
import { propertyOfId } from '../../portfolio/properties/property.loader.js';
import { wateringRulesOfSupplier } from '../../portfolio/suppliers/rules/watering-rules.loader.js';
import { zonesOfProperty } from '../../portfolio/zones/zones-of-property.loader.js';
import { presentAndPlanned } from '../../settings/facts/present-and-planned.loader.js';
import { programFromKept } from '../../settings/program-from-kept.service.js';
import { planSettings } from '../weights/plan-setting.repository.js';
import { minutesOf, ruleOfRow } from './rule-of-row.js';
import { type PropertySupply, type SupplyOfController, supplyOfController } from './shared-meter.js';
import { zoneToPlan } from './zone-to-plan.js';

/** Why a controller cannot be planned. */
export type UnplannedCode =
  | 'NO_ZONES'
  | 'NO_WEATHER'
  | 'FLOWS_NOT_KNOWN'
  | 'STATIONS_WITHOUT_ZONE'
  | 'STATION_OF_SEVERAL_ZONES'
  | 'NOTHING_KEEPS_ALL';

/** Why a controller cannot be planned, with what is meant. */
interface Unplanned {
  readonly code: UnplannedCode;
  readonly details: Record<string, unknown>;
}

interface NeedsOfPlan {
  readonly needMonths: readonly string[];
  readonly accountZones: ReadonlyMap<string, AccountZone>;
  readonly shared: SupplyOfController['shared'];
}

/** What a controller is planned from, or why it cannot be. */
export type Gathered =
  | (NeedsOfPlan & { readonly input: PlanInput; readonly reason: null })
  | { readonly input: null; readonly reason: Unplanned };

/** The same without what is set on it now. */
type GatheredGround =
  | (NeedsOfPlan & { readonly ground: PlanGround; readonly reason: null })
  | { readonly ground: null; readonly reason: Unplanned };

/** A controller as its table has it. */
export type PlannableController = NonNullable<Awaited<ReturnType<ReturnType<(typeof controllerOfId)['of']>['load']>>>;
type PropertyRow = NonNullable<Awaited<ReturnType<ReturnType<(typeof propertyOfId)['of']>['load']>>>;

/** The rules that a property's supplier has, as a change would leave them. */
export type RulesInstead = (rules: readonly { readonly id: string; readonly rule: WateringRule }[]) => readonly WateringRule[];

const asTheyAre: RulesInstead = (rules) => rules.map(({ rule }) => rule);
const because = (code: UnplannedCode, details: Record<string, unknown> = {}) => ({ reason: { code, details } });

/**
 * Gathers what a controller is planned from in one month: zones with their need, present programs, rules, hours, weights and what the meter
 * carries.
 */
export async function gatherPlan(
  tx: OrganizationTransaction,
  controller: PlannableController,
  month: string,
  rulesInstead: RulesInstead = asTheyAre,
): Promise<Gathered> {
  const { ground, ...about } = await gatherGround(tx, controller, month, rulesInstead);
  if (!ground) return { input: null, reason: about.reason! };
  const present = await presentPrograms(tx, controller.id);
  const stations = stationsWithoutZone(ground.zones, present ?? []);
  if (stations.length) return { input: null, ...because('STATIONS_WITHOUT_ZONE', { stations }) };
  return { ...(about as NeedsOfPlan), input: { ...ground, present }, reason: null };
}

/** Gathers all of it but what is set on the controller: for who stands before it and sees that. */
export async function gatherGround(
  tx: OrganizationTransaction,
  controller: PlannableController,
  month: string,
  rulesInstead: RulesInstead = asTheyAre,
): Promise<GatheredGround> {
  const property = (await propertyOfId.of(tx).load(controller.propertyId))!;
  const zones = await gatherZones(tx, property, controller.id, month);
  if ('reason' in zones) return { ground: null, ...zones };
  const { waterFrom, waterUntil, thirst, waste, keyPress, watering } = await planSettings.own(tx);
  const rules = rulesInstead(await rulesOf(tx, property));
  const window = { from: minutesOf(waterFrom), until: minutesOf(waterUntil) };
  const { shared, ...supply } = supplyOfController(controller.id, { ...zones.supply, window, rules });
  const ground: PlanGround = {
    month,
    traits: { ...controller, adjustScope: controller.adjustScope ?? 'program' },
    zones: zones.zones,
    rules,
    place: { addressNumber: addressNumberOf(property.address), water: zones.water },
    window: supply.window,
    flowLimitLPerMin: supply.flowLimitLPerMin,
    weights: { thirst, waste, keyPress, watering },
  };
  return { ground, needMonths: zones.months, accountZones: zones.accountZones, shared, reason: null };
}

async function rulesOf(tx: OrganizationTransaction, property: PropertyRow) {
  const rows = property.waterSupplierId === null ? [] : await wateringRulesOfSupplier.of(tx).load(property.waterSupplierId);
  return rows.map((row) => ({ id: row.id, rule: ruleOfRow(row) }));
}

async function presentPrograms(tx: OrganizationTransaction, controllerId: string): Promise<readonly Program[] | null> {
  const { present } = await presentAndPlanned.of(tx).load(controllerId);
  return present?.state === 'on' ? present.programs.map(programFromKept) : null;
}

interface GatheredZones {
  readonly zones: readonly ZoneToPlan[];
  readonly months: readonly string[];
  readonly accountZones: ReadonlyMap<string, AccountZone>;
  readonly water: string | null;
  readonly supply: Pick<PropertySupply, 'zones' | 'meters' | 'needs'>;
}

async function gatherZones(
  tx: OrganizationTransaction,
  property: PropertyRow,
  controllerId: string,
  month: string,
): Promise<GatheredZones | { readonly reason: Unplanned }> {
  const all = await zonesOfProperty.of(tx).load(property.id);
  const rows = all.filter((zone) => zone.controllerId === controllerId && zone.station !== null);
  if (!rows.length) return because('NO_ZONES');
  const twice = rows.filter((zone, at) => rows.findIndex(({ station }) => station === zone.station) !== at);
  if (twice.length) return because('STATION_OF_SEVERAL_ZONES', { stations: twice.map(({ station }) => station) });
  const needs = await needOfMonth(tx, property, month, todayOf(await organizations.own(tx)));
  if (!needs) return because('NO_WEATHER');
  const planned = rows.map((zone) => {
    const need = needs.zones.get(zone.id);
    return { name: zone.name, plan: need ? zoneToPlan({ ...zone, station: zone.station! }, need) : null };
  });
  const missing = planned.filter(({ plan }) => plan === null).map(({ name }) => name);
  if (missing.length) return because('FLOWS_NOT_KNOWN', { zones: missing });
  const metersOfAll = await metersOfProperty.of(tx).load(property.id);
  const meters = metersOfAll.filter(({ id }) => rows.some(({ meterId }) => meterId === null || meterId === id));
  const waters = new Set(meters.map(({ water }) => water));
  return {
    zones: planned.flatMap(({ plan }) => plan ?? []),
    months: needs.months,
    accountZones: new Map([...needs.zones].map(([id, { zone }]) => [id, zone])),
    water: waters.size === 1 ? (meters[0]?.water ?? null) : null,
    supply: { zones: all, meters: metersOfAll, needs: needs.zones },
  };
}

/** The number of a house, by which streets are parted: the first one of the address. */
export function addressNumberOf(address: string | null): number | null {
  const [, number] = /^\s*(\d{1,9})\b/.exec(address ?? '') ?? [];
  return number === undefined ? null : Number(number);
}
