import { rowByRow } from './question.js';

// Byte order: the same on every server, whatever its collations.
const BY = (column: string): string => `${column} collate "C"`;
const IN_USE = (alias: string): string => `${alias}.organization_id = $1 and ${alias}.retired_at is null`;
const PROPERTY = (child: string): string =>
  `join property p on p.organization_id = ${child}.organization_id and p.id = ${child}.property_id and p.retired_at is null`;

/** The portfolio as its files have it: things in use, by name. */
export const portfolioQuestions = {
  clients: rowByRow<'clients'>(
    `select t.typed, t.name as client, nullif(t.emails, '{}') as emails, t.language, t.units, t.not_to_exceed as "notToExceed"
       from client t where ${IN_USE('t')} order by ${BY('t.name')}`,
  ),
  stations: rowByRow<'stations'>(
    `select t.typed, t.name as station, t.latitude, t.longitude, t.elevation_m as "elevationM"
       from weather_station t where ${IN_USE('t')} order by ${BY('t.name')}`,
  ),
  // A station that is not known yet stands in the cell as it was typed.
  properties: rowByRow<'properties'>(
    `select t.typed, t.name as property, c.name as client, t.address, t.city, t.latitude, t.longitude, t.elevation_m as "elevationM", t.time_zone as "timeZone",
            coalesce(s.name, normalize(btrim(t.typed ->> 'weather_station'), nfc)) as "weatherStation", w.name as "waterSupplier", t.allowance_from as "allowanceFrom",
            t.allowance_etaf as "allowanceEtaf", t.allowance_litres_per_month as "allowanceLitresPerMonth", t.special_landscape_area_m2 as "specialLandscapeAreaM2", t.notes
       from property t join client c on c.organization_id = t.organization_id and c.id = t.client_id
       left join weather_station s on s.organization_id = t.organization_id and s.id = t.weather_station_id
       left join water_supplier w on w.organization_id = t.organization_id and w.id = t.water_supplier_id
      where ${IN_USE('t')} order by ${BY('t.name')}`,
  ),
  meters: rowByRow<'meters'>(
    `select t.typed, t.name as meter, p.name as property, t.kind, t.water, t.unit, t.multiplier, t.digits, t.resolution, t.size_mm as "sizeMm", t.max_l_per_min as "maxLPerMin",
            t.pressure_kpa as "pressureKpa", t.indoor_l_per_day as "indoorLPerDay", t.price_per_unit as "pricePerUnit", t.installed_on::text as "installedOn",
            t.first_register as "firstRegister", t.removed_on::text as "removedOn", t.last_register as "lastRegister"
       from meter t ${PROPERTY('t')} where ${IN_USE('t')} order by ${BY('p.name')}, ${BY('t.name')}`,
  ),
  controllers: rowByRow<'controllers'>(
    `select t.typed, t.name as controller, p.name as property, t.stations, t.programs, t.starts_per_program as "startsPerProgram", t.max_minutes as "maxMinutes", t.minute_step as "minuteStep",
            t.adjust_scope as "adjustScope", t.adjust_step_percent as "adjustStepPercent", t.max_adjust_percent as "maxAdjustPercent", t.monthly_adjust_percent as "monthlyAdjustPercent",
            t.runs_at_once as "runsAtOnce", t.cycle_soak as "cycleSoak", t.master_valve as "masterValve", t.rain_sensor as "rainSensor", t.rain_sensor_mm as "rainSensorMm",
            t.flow_sensor as "flowSensor", t.location
       from controller t ${PROPERTY('t')} where ${IN_USE('t')} order by ${BY('p.name')}, ${BY('t.name')}`,
  ),
  zones: rowByRow<'zones'>(
    `select t.typed, p.name as property, t.name as zone, c.name as controller, t.station, case when t.unmetered then 'none' else m.name end as meter, t.area_m2 as "areaM2", t.plants,
            t.water_need as "waterNeed", t.plant_factor as "plantFactor", t.method, t.precip_mm_per_h as "precipMmPerH", t.flow_l_per_min as "flowLPerMin", t.flow_source as "flowSource",
            t.hand_l_per_week as "handLPerWeek", t.du_lq as "duLq", t.soil, t.slope_percent as "slopePercent", t.sun, t.density, t.root_depth_mm as "rootDepthMm", t.mulch_mm as "mulchMm",
            t.leaching_fraction as "leachingFraction", t.established_on::text as "establishedOn"
       from zone t ${PROPERTY('t')} left join controller c on c.organization_id = t.organization_id and c.id = t.controller_id
       left join meter m on m.organization_id = t.organization_id and m.id = t.meter_id
      where ${IN_USE('t')} order by ${BY('p.name')}, ${BY('t.name')}`,
  ),
  plantings: rowByRow<'plantings'>(
    `select t.typed, p.name as property, z.name as zone, t.species, t.cover_percent as "coverPercent", t.water_need as "waterNeed", t.planted_on::text as "plantedOn"
       from planting t join zone z on z.organization_id = t.organization_id and z.id = t.zone_id and z.retired_at is null ${PROPERTY('z')}
      where ${IN_USE('t')} order by ${BY('p.name')}, ${BY('z.name')}, ${BY('t.species')}`,
  ),
  rules: rowByRow<'rules'>(
    `select t.typed, t.name as rule, w.name as "waterSupplier", t.allowed_days as "allowedDays", t.days_per_week as "daysPerWeek", t.address_parity as "addressParity", t.blocked_from as "blockedFrom",
            t.blocked_until as "blockedUntil", t.max_minutes as "maxMinutes", t.hours_after_rain as "hoursAfterRain", t.rain_mm as "rainMm", t.plants, t.exempt_methods as "exemptMethods",
            t.water, t.effective_from::text as "effectiveFrom", t.effective_until::text as "effectiveUntil"
       from watering_rule t join water_supplier w on w.organization_id = t.organization_id and w.id = t.supplier_id
      where ${IN_USE('t')} order by ${BY('w.name')}, ${BY('t.name')}, t.effective_from nulls first`,
  ),
  rates: rowByRow<'rates'>(
    `select t.typed, w.name as "waterSupplier", t.effective_from::text as "effectiveFrom", t.fixed, t.tier, t.up_to as "upTo", t.up_to_is as "upToIs", t.unit, t.price
       from rate_tier t join water_supplier w on w.organization_id = t.organization_id and w.id = t.supplier_id
      where ${IN_USE('t')} order by ${BY('w.name')}, t.effective_from, t.tier`,
  ),
  backflow: rowByRow<'backflow'>(
    `select t.typed, p.name as property, t.name as assembly, t.location, t.kind, t.last_tested_on::text as "lastTestedOn", t.next_test_due_on::text as "nextTestDueOn"
       from backflow_assembly t ${PROPERTY('t')} where ${IN_USE('t')} order by ${BY('p.name')}, ${BY('t.name')}`,
  ),
};
