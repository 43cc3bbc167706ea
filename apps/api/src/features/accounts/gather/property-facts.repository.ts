import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { grouped } from '../../../platform/graphql/loader.js';
import type {
  BillFact,
  ControllerFact,
  MeterFact,
  PauseFact,
  PropertyFact,
  PropertyFacts,
  ReadingFact,
  SettingsFactRow,
  UsageDayFact,
  ZoneFact,
} from './property-facts.js';

const EPOCH = `date '1970-01-01'`;

/** Day number on the property's calendar, with the elapsed share of its real 23, 24 or 25 hours. */
const localDay = (instant: string): string => {
  const day = `(${instant} at time zone p.time_zone)::date`;
  const begin = `(${day}::timestamp at time zone p.time_zone)`;
  const end = `((${day} + 1)::timestamp at time zone p.time_zone)`;
  return `(${day} - ${EPOCH}) + extract(epoch from ${instant} - ${begin}) / extract(epoch from ${end} - ${begin})`;
};

const wallTime = (instant: string): string => `to_char(${instant} at time zone p.time_zone, 'YYYY-MM-DD"T"HH24:MI')`;

const OF_PROPERTIES =
  'join property p on p.organization_id = t.organization_id and p.id = t.property_id where t.organization_id = $1 and t.property_id = any($2)';
const OF_CONTROLLERS =
  'join controller c on c.organization_id = t.organization_id and c.id = t.controller_id join property p on p.organization_id = c.organization_id and p.id = c.property_id where t.organization_id = $1 and c.property_id = any($2)';
const OF_METERS =
  'join meter m on m.organization_id = t.organization_id and m.id = t.meter_id join property p on p.organization_id = m.organization_id and p.id = m.property_id where t.organization_id = $1 and m.property_id = any($2)';

/** A zone's plants, in one cell: they are few. */
const PLANTINGS = `coalesce((select json_agg(json_build_object('waterNeed', planting.water_need, 'coverPercent', planting.cover_percent, 'plantedOn', planting.planted_on) order by planting.species) from planting where planting.organization_id = t.organization_id and planting.zone_id = t.id and planting.retired_at is null), '[]'::json)`;

const QUESTIONS = {
  zones: `select t.id, t.property_id as "propertyId", t.name, t.controller_id as "controllerId", t.station, t.meter_id as "meterId", t.unmetered, t.area_m2 as "areaM2", t.plants, t.water_need as "waterNeed", t.plant_factor as "plantFactor", t.method, t.precip_mm_per_h as "precipMmPerH", t.flow_l_per_min as "flowLPerMin", t.flow_source as "flowSource", t.hand_l_per_week as "handLPerWeek", t.du_lq as "duLq", t.soil, t.sun, t.density, t.root_depth_mm as "rootDepthMm", t.leaching_fraction as "leachingFraction", t.established_on::text as "establishedOn", ${PLANTINGS} as plantings from zone t ${OF_PROPERTIES} and t.retired_at is null order by t.name`,
  controllers: `select t.id, t.property_id as "propertyId", t.stations, t.programs, t.starts_per_program as "startsPerProgram", t.max_minutes as "maxMinutes", t.minute_step as "minuteStep", t.adjust_scope as "adjustScope", t.adjust_step_percent as "adjustStepPercent", t.max_adjust_percent as "maxAdjustPercent", t.monthly_adjust_percent as "monthlyAdjustPercent", t.runs_at_once as "runsAtOnce", t.cycle_soak as "cycleSoak", t.rain_sensor as "rainSensor", t.rain_sensor_mm as "rainSensorMm" from controller t ${OF_PROPERTIES} and t.retired_at is null order by t.name`,
  settings: `select t.controller_id as "controllerId", c.property_id as "propertyId", ${wallTime('t.effective_at')} as "localTime", t.record, t.state, t.programs from settings t ${OF_CONTROLLERS} and c.retired_at is null order by t.effective_at`,
  pauses: `select t.controller_id as "controllerId", c.property_id as "propertyId", ${wallTime('t.paused_from')} as "from", ${wallTime('t.paused_until')} as "until" from rain_pause t ${OF_CONTROLLERS} and c.retired_at is null order by t.paused_from`,
  meters: `select t.id, t.property_id as "propertyId", t.name, t.kind, t.water, t.size_mm as "sizeMm", t.unit, t.multiplier, t.digits, t.resolution, t.indoor_l_per_day as "indoorLPerDay", t.price_per_unit as "pricePerUnit", t.installed_on::text as "installedOn", t.first_register as "firstRegister", t.removed_on::text as "removedOn", t.last_register as "lastRegister" from meter t ${OF_PROPERTIES} and t.retired_at is null order by t.name`,
  readings: `select t.id, t.meter_id as "meterId", m.property_id as "propertyId", (${localDay('t.read_at')})::double precision as "localDay", t.read_at as "readAt", t.register from reading t ${OF_METERS} and t.replaced_by_id is null order by t.read_at`,
  usageDays: `select t.meter_id as "meterId", m.property_id as "propertyId", t.day - ${EPOCH} as "dayNumber", extract(epoch from ((t.day + 1)::timestamp at time zone p.time_zone) - t.day_start)::double precision as "daySeconds", t.start_seconds as "startSeconds", t.length_seconds as "lengthSeconds", t.volumes, t.unit from usage_day t ${OF_METERS} order by t.day`,
  bills: `select t.meter_id as "meterId", m.property_id as "propertyId", t.start_on - ${EPOCH} as "startDay", t.end_on - ${EPOCH} as "endDay", t.litres from bill t ${OF_METERS} order by t.start_on`,
} as const;

const PROPERTIES = `select id, time_zone as "timeZone", weather_station_id as "stationId", water_supplier_id as "supplierId", address, allowance_from as "allowanceFrom", allowance_etaf as "allowanceEtaf", allowance_litres_per_month as "allowanceLitresPerMonth", special_landscape_area_m2 as "specialLandscapeAreaM2" from property where organization_id = $1 and id = any($2) and retired_at is null`;

/** What enters the accounts of properties. */
export const propertyFacts = {
  /** Zones and meters of one property, where nothing else is asked for. */
  async zonesAndMeters(tx: OrganizationTransaction, propertyId: string): Promise<Pick<PropertyFacts, 'zones' | 'meters'>> {
    const { zones, meters } = await propertyFacts.zonesAndMetersOf(tx, [propertyId]);
    return { zones: zones.get(propertyId) ?? [], meters: meters.get(propertyId) ?? [] };
  },

  /** Zones and meters of some properties, by property, in two statements. */
  async zonesAndMetersOf(
    tx: OrganizationTransaction,
    propertyIds: readonly string[],
  ): Promise<{ readonly zones: ReadonlyMap<string, ZoneFact[]>; readonly meters: ReadonlyMap<string, MeterFact[]> }> {
    const asked = [tx.organizationId, propertyIds];
    const zones = await tx.query<ZoneFact>(QUESTIONS.zones, asked);
    const meters = await tx.query<MeterFact>(QUESTIONS.meters, asked);
    const of = ({ propertyId }: { readonly propertyId: string }): string => propertyId;
    return { zones: grouped(zones, of), meters: grouped(meters, of) };
  },

  /** Everything that enters the accounts of some properties, in nine statements however many they are. */
  async of(tx: OrganizationTransaction, propertyIds: readonly string[]): Promise<PropertyFacts[]> {
    const ask = <Row extends { readonly propertyId: string }>(sql: string) =>
      tx.query<Row>(sql, [tx.organizationId, propertyIds]).then((rows) => grouped(rows, (row) => row.propertyId));
    const found = await tx.query<PropertyFact>(PROPERTIES, [tx.organizationId, propertyIds]);
    const zones = await ask<ZoneFact>(QUESTIONS.zones);
    const controllers = await ask<ControllerFact>(QUESTIONS.controllers);
    const settings = await ask<SettingsFactRow>(QUESTIONS.settings);
    const pauses = await ask<PauseFact>(QUESTIONS.pauses);
    const meters = await ask<MeterFact>(QUESTIONS.meters);
    const readings = await ask<ReadingFact>(QUESTIONS.readings);
    const usageDays = await ask<UsageDayFact>(QUESTIONS.usageDays);
    const bills = await ask<BillFact>(QUESTIONS.bills);
    const of = <Row>(groups: Map<string, Row[]>, id: string): Row[] => groups.get(id) ?? [];
    return found.map((property) => ({
      property,
      zones: of(zones, property.id),
      controllers: of(controllers, property.id),
      settings: of(settings, property.id),
      pauses: of(pauses, property.id),
      meters: of(meters, property.id),
      readings: of(readings, property.id),
      usageDays: of(usageDays, property.id),
      bills: of(bills, property.id),
    }));
  },
};
