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
import { zoneToPlan } from './zone-to-plan.js';

/** Why a controller cannot be planned. */
export type UnplannedCode =
  | 'NO_ZONES'
  | 'NO_WEATHER'
  | 'FLOWS_NOT_KNOWN'
  | 'STATIONS_WITHOUT_ZONE'
  | 'STATION_OF_SEVERAL_ZONES'
  | 'NOTHING_KEEPS_ALL';

/** What a controller is planned from, or why it cannot be. */
export type Gathered =
  | {
      readonly input: PlanInput;
      readonly needMonths: readonly string[];
      readonly accountZones: ReadonlyMap<string, AccountZone>;
      readonly reason: null;
    }
  | { readonly input: null; readonly reason: { readonly code: UnplannedCode; readonly details: Record<string, unknown> } };

/** A controller as its table has it. */
export type PlannableController = NonNullable<Awaited<ReturnType<ReturnType<(typeof controllerOfId)['of']>['load']>>>;
type PropertyRow = NonNullable<Awaited<ReturnType<ReturnType<(typeof propertyOfId)['of']>['load']>>>;

/** The rules that a property's supplier has, as a change would leave them. */
export type RulesInstead = (rules: readonly { readonly id: string; readonly rule: WateringRule }[]) => readonly WateringRule[];

const asTheyAre: RulesInstead = (rules) => rules.map(({ rule }) => rule);
const unplanned = (code: UnplannedCode, details: Record<string, unknown> = {}): Gathered => ({ input: null, reason: { code, details } });

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
  const property = (await propertyOfId.of(tx).load(controller.propertyId))!;
  const present = await presentPrograms(tx, controller.id);
  const zones = await gatherZones(tx, property, controller.id, month);
  if ('reason' in zones) return zones;
  const strange = unknownStations(present, zones.zones);
  if (strange.length) return unplanned('STATIONS_WITHOUT_ZONE', { stations: strange });
  const { waterFrom, waterUntil, thirst, waste, keyPress, watering } = await planSettings.own(tx);
  const input: PlanInput = {
    month,
    traits: { ...controller, adjustScope: controller.adjustScope ?? 'program' },
    zones: zones.zones,
    present,
    rules: rulesInstead(await rulesOf(tx, property)),
    place: { addressNumber: addressNumberOf(property.address), water: zones.water },
    window: { from: minutesOf(waterFrom), until: minutesOf(waterUntil) },
    flowLimitLPerMin: zones.flowLimit,
    weights: { thirst, waste, keyPress, watering },
  };
  return { input, needMonths: zones.months, accountZones: zones.accountZones, reason: null };
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
  readonly flowLimit: number | null;
}

async function gatherZones(
  tx: OrganizationTransaction,
  property: PropertyRow,
  controllerId: string,
  month: string,
): Promise<GatheredZones | Extract<Gathered, { input: null }>> {
  const rows = (await zonesOfProperty.of(tx).load(property.id)).filter(
    (zone) => zone.controllerId === controllerId && zone.station !== null,
  );
  if (!rows.length) return unplanned('NO_ZONES') as Extract<Gathered, { input: null }>;
  const twice = rows.filter((zone, at) => rows.findIndex(({ station }) => station === zone.station) !== at);
  if (twice.length)
    return unplanned('STATION_OF_SEVERAL_ZONES', { stations: twice.map(({ station }) => station) }) as Extract<Gathered, { input: null }>;
  const needs = await needOfMonth(tx, property, month, todayOf(await organizations.own(tx)));
  if (!needs) return unplanned('NO_WEATHER') as Extract<Gathered, { input: null }>;
  const planned = rows.map((zone) => {
    const need = needs.zones.get(zone.id);
    return { name: zone.name, plan: need ? zoneToPlan({ ...zone, station: zone.station! }, need) : null };
  });
  const missing = planned.filter(({ plan }) => plan === null).map(({ name }) => name);
  if (missing.length) return unplanned('FLOWS_NOT_KNOWN', { zones: missing }) as Extract<Gathered, { input: null }>;
  const meters = (await metersOfProperty.of(tx).load(property.id)).filter(({ id }) =>
    rows.some(({ meterId }) => meterId === null || meterId === id),
  );
  const limits = meters.flatMap(({ maxLPerMin }) => (maxLPerMin === null ? [] : [maxLPerMin]));
  const waters = new Set(meters.map(({ water }) => water));
  return {
    zones: planned.flatMap(({ plan }) => plan ?? []),
    months: needs.months,
    accountZones: new Map([...needs.zones].map(([id, { zone }]) => [id, zone])),
    water: waters.size === 1 ? (meters[0]?.water ?? null) : null,
    flowLimit: limits.length ? Math.min(...limits) : null,
  };
}

function unknownStations(present: readonly Program[] | null, zones: readonly ZoneToPlan[]): number[] {
  const known = new Set(zones.map(({ station }) => station));
  const run = (present ?? []).flatMap(({ stations }) => stations.filter(({ minutes }) => minutes > 0).map(({ station }) => station));
  return [...new Set(run)].filter((station) => !known.has(station)).sort((a, b) => a - b);
}

/** The number of a house, by which streets are parted: the first one of the address. */
export function addressNumberOf(address: string | null): number | null {
  const [, number] = /^\s*(\d{1,9})\b/.exec(address ?? '') ?? [];
  return number === undefined ? null : Number(number);
}
