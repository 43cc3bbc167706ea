import type { MigrationInterface, QueryRunner } from 'typeorm';
import { dropTables, mayPoint, organizationTable, points } from './organization-table.js';

const kept = { kept: true };
const named = (table: string, owner: string): string =>
  `name text not null constraint ${table}_name_given check (length(btrim(name)) > 0), constraint ${table}_name_once unique (organization_id, ${owner}, name)`;
const oneOf = (table: string, column: string, words: readonly string[]): string =>
  `constraint ${table}_${column}_known check (${column} in (${words.map((word) => `'${word}'`).join(', ')}))`;
const notNegative = (table: string, column: string): string => `constraint ${table}_${column}_not_negative check (${column} >= 0)`;
const NEEDS = ['very low', 'low', 'moderate', 'high'];
const PLANTS = ['turf cool-season', 'turf warm-season', 'trees', 'shrubs', 'groundcover', 'perennials', 'annuals', 'vegetables', 'mixed'];
const METHODS = ['spray', 'rotor', 'rotary nozzle', 'bubbler', 'microspray', 'drip', 'subsurface drip', 'hand'];
const SOILS = ['sand', 'loamy sand', 'sandy loam', 'loam', 'silt loam', 'clay loam', 'silty clay', 'clay'];

/** Weather stations, water suppliers, properties and what stands on them. */
export class CreatePortfolio20261124020000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await this.suppliers(runner);
    await this.properties(runner);
    await this.meters(runner);
    await this.controllers(runner);
    await this.zones(runner);
  }

  private async suppliers(runner: QueryRunner): Promise<void> {
    await organizationTable(
      runner,
      'weather_station',
      `name text not null, latitude double precision not null constraint weather_station_latitude_on_earth check (latitude between -90 and 90), longitude double precision not null constraint weather_station_longitude_on_earth check (longitude between -180 and 180), elevation_m double precision, constraint weather_station_name_once unique (organization_id, name)`,
      kept,
    );
    await organizationTable(
      runner,
      'weather_day',
      `station_id uuid not null, day date not null, tmax_c double precision, tmin_c double precision, rh_max_percent double precision, rh_min_percent double precision, dew_point_c double precision, wind_m_per_s double precision, wind_height_m double precision, solar_mj_per_m2 double precision, rain_mm double precision, given_eto_mm double precision, quality jsonb not null default '{}'::jsonb, typed jsonb not null default '{}'::jsonb, constraint weather_day_station ${points('weather_station', 'station_id')}`,
      { key: 'station_id, day' },
    );
    await organizationTable(
      runner,
      'water_supplier',
      `name text not null, constraint water_supplier_name_once unique (organization_id, name)`,
      kept,
    );
    await organizationTable(
      runner,
      'watering_rule',
      `supplier_id uuid not null, name text not null, allowed_days text, days_per_week integer, address_parity text ${oneOf('watering_rule', 'address_parity', ['odd', 'even'])}, blocked_from text, blocked_until text, max_minutes double precision, hours_after_rain double precision, rain_mm double precision, plants text, exempt_methods text, water text, effective_from date, effective_until date, constraint watering_rule_once unique nulls not distinct (organization_id, supplier_id, name, effective_from), constraint watering_rule_supplier ${points('water_supplier', 'supplier_id')}`,
      kept,
    );
    await organizationTable(
      runner,
      'rate_tier',
      `supplier_id uuid not null, effective_from date not null, fixed double precision, tier integer not null, up_to double precision, up_to_is text ${oneOf('rate_tier', 'up_to_is', ['volume', 'share of allowance'])}, unit text not null, price double precision not null ${notNegative('rate_tier', 'price')}, constraint rate_tier_once unique (organization_id, supplier_id, effective_from, tier), constraint rate_tier_supplier ${points('water_supplier', 'supplier_id')}`,
      kept,
    );
  }

  private async properties(runner: QueryRunner): Promise<void> {
    await organizationTable(
      runner,
      'property',
      `client_id uuid not null, name text not null constraint property_name_given check (length(btrim(name)) > 0), address text, city text, latitude double precision constraint property_latitude_on_earth check (latitude between -90 and 90), longitude double precision constraint property_longitude_on_earth check (longitude between -180 and 180), elevation_m double precision, time_zone text not null, weather_station_id uuid, water_supplier_id uuid, allowance_from text ${oneOf('property', 'allowance_from', ['ordinance', 'contract'])}, allowance_etaf double precision constraint property_etaf_possible check (allowance_etaf between 0 and 2), allowance_litres_per_month double precision[] constraint property_allowance_has_twelve check (array_length(allowance_litres_per_month, 1) = 12), special_landscape_area_m2 double precision ${notNegative('property', 'special_landscape_area_m2')}, notes text, constraint property_name_once unique (organization_id, name), constraint property_client ${points('client', 'client_id', 'on delete restrict')}, constraint property_weather_station ${mayPoint('weather_station')}, constraint property_water_supplier ${mayPoint('water_supplier')}`,
      kept,
    );
    await runner.query('create index property_of_client on property (organization_id, client_id)');
    await organizationTable(
      runner,
      'backflow_assembly',
      `property_id uuid not null, ${named('backflow_assembly', 'property_id')}, location text, kind text, last_tested_on date, next_test_due_on date, constraint backflow_assembly_property ${points('property')}`,
      kept,
    );
  }

  private async meters(runner: QueryRunner): Promise<void> {
    await organizationTable(
      runner,
      'meter',
      `property_id uuid not null, ${named('meter', 'property_id')}, kind text not null default 'irrigation' ${oneOf('meter', 'kind', ['irrigation', 'mixed'])}, water text not null default 'potable' ${oneOf('meter', 'water', ['potable', 'recycled', 'well'])}, unit text not null ${oneOf('meter', 'unit', ['CCF', 'HCF', 'kgal', 'gal', 'ft3', 'm3', 'L'])}, multiplier double precision not null default 1 constraint meter_multiplier_positive check (multiplier > 0), digits integer constraint meter_digits_possible check (digits between 1 and 12), resolution double precision constraint meter_resolution_positive check (resolution > 0), size_mm double precision, max_l_per_min double precision, pressure_kpa double precision, indoor_l_per_day double precision ${notNegative('meter', 'indoor_l_per_day')}, price_per_unit double precision ${notNegative('meter', 'price_per_unit')}, installed_on date, first_register double precision, removed_on date, last_register double precision, constraint meter_property ${points('property')}`,
      kept,
    );
  }

  private async controllers(runner: QueryRunner): Promise<void> {
    await organizationTable(
      runner,
      'controller',
      `property_id uuid not null, ${named('controller', 'property_id')}, stations integer not null constraint controller_stations_possible check (stations between 1 and 500), programs integer, starts_per_program integer, max_minutes double precision, minute_step double precision, adjust_scope text ${oneOf('controller', 'adjust_scope', ['controller', 'program'])}, adjust_step_percent double precision, max_adjust_percent double precision, monthly_adjust_percent double precision[] constraint controller_monthly_has_twelve check (array_length(monthly_adjust_percent, 1) = 12), runs_at_once integer, cycle_soak boolean, master_valve boolean, rain_sensor boolean, rain_sensor_mm double precision, flow_sensor boolean, location text, constraint controller_property ${points('property')}`,
      kept,
    );
    await organizationTable(
      runner,
      'settings',
      `controller_id uuid not null, effective_at timestamptz not null, record text not null ${oneOf('settings', 'record', ['found', 'left', 'planned'])}, state text not null ${oneOf('settings', 'state', ['on', 'off', 'weather', 'unknown'])}, programs jsonb not null default '[]'::jsonb, person_id uuid references person (id) on delete set null, recorded_at timestamptz not null default now(), device_record_id uuid, typed jsonb not null default '{}'::jsonb, constraint settings_once unique (organization_id, controller_id, effective_at, record), constraint settings_device_record_once unique (organization_id, device_record_id), constraint settings_controller ${points('controller')}`,
    );
    await organizationTable(
      runner,
      'rain_pause',
      `controller_id uuid not null, paused_from timestamptz not null, paused_until timestamptz, typed jsonb not null default '{}'::jsonb, constraint rain_pause_once unique (organization_id, controller_id, paused_from), constraint rain_pause_ends_after_start check (paused_until is null or paused_until > paused_from), constraint rain_pause_controller ${points('controller')}`,
    );
  }

  private async zones(runner: QueryRunner): Promise<void> {
    await organizationTable(
      runner,
      'zone',
      `property_id uuid not null, ${named('zone', 'property_id')}, controller_id uuid, station integer constraint zone_station_positive check (station >= 1), meter_id uuid, unmetered boolean not null default false, area_m2 double precision not null constraint zone_area_positive check (area_m2 > 0), plants text ${oneOf('zone', 'plants', PLANTS)}, water_need text ${oneOf('zone', 'water_need', NEEDS)}, plant_factor double precision constraint zone_plant_factor_possible check (plant_factor between 0 and 2), method text not null ${oneOf('zone', 'method', METHODS)}, precip_mm_per_h double precision constraint zone_precip_positive check (precip_mm_per_h > 0), flow_l_per_min double precision constraint zone_flow_positive check (flow_l_per_min > 0), flow_source text ${oneOf('zone', 'flow_source', ['measured', 'nameplate', 'assumed'])}, hand_l_per_week double precision ${notNegative('zone', 'hand_l_per_week')}, du_lq double precision constraint zone_du_lq_is_share check (du_lq > 0 and du_lq <= 1), soil text ${oneOf('zone', 'soil', SOILS)}, slope_percent double precision ${notNegative('zone', 'slope_percent')}, sun text ${oneOf('zone', 'sun', ['full', 'part', 'shade'])}, density double precision constraint zone_density_possible check (density between 0 and 2), root_depth_mm double precision constraint zone_root_depth_positive check (root_depth_mm > 0), mulch_mm double precision ${notNegative('zone', 'mulch_mm')}, leaching_fraction double precision constraint zone_leaching_is_share check (leaching_fraction >= 0 and leaching_fraction < 1), established_on date, constraint zone_controller_and_station_together check ((controller_id is null) = (station is null)), constraint zone_one_meter_or_none check (not (unmetered and meter_id is not null)), constraint zone_property ${points('property')}, constraint zone_controller ${points('controller', 'controller_id', 'on delete restrict')}, constraint zone_meter ${points('meter', 'meter_id', 'on delete restrict')}`,
      kept,
    );
    await runner.query(
      'create unique index zone_station_once on zone (organization_id, controller_id, station) where retired_at is null and controller_id is not null',
    );
    await organizationTable(
      runner,
      'planting',
      `zone_id uuid not null, species text not null, cover_percent double precision constraint planting_cover_is_percent check (cover_percent between 0 and 100), water_need text ${oneOf('planting', 'water_need', NEEDS)}, planted_on date, constraint planting_once unique (organization_id, zone_id, species), constraint planting_zone ${points('zone')}`,
      kept,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await dropTables(runner, [
      'planting',
      'zone',
      'rain_pause',
      'settings',
      'controller',
      'meter',
      'backflow_assembly',
      'property',
      'rate_tier',
      'watering_rule',
      'water_supplier',
      'weather_day',
      'weather_station',
    ]);
  }
}
