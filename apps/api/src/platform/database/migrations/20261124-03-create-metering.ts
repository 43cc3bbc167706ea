import type { MigrationInterface, QueryRunner } from 'typeorm';
import { dropTables, organizationTable, points } from './organization-table.js';

/** Readings, usage, bills, and the month accounts computed from them. */
export class CreateMetering20261124030000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await organizationTable(
      runner,
      'reading',
      `meter_id uuid not null, read_at timestamptz not null, register double precision not null constraint reading_register_not_negative check (register >= 0), source text not null default 'crew' constraint reading_source_known check (source in ('crew', 'bill', 'feed')), note text, device_record_id uuid, replaced_by_id uuid, person_id uuid references person (id) on delete set null, recorded_at timestamptz not null default now(), typed jsonb not null default '{}'::jsonb, constraint reading_once unique (organization_id, device_record_id), constraint reading_meter ${points('meter')}, constraint reading_replaced_by foreign key (organization_id, replaced_by_id) references reading (organization_id, id)`,
    );
    await runner.query(
      'create unique index reading_one_at_a_time on reading (organization_id, meter_id, read_at) where replaced_by_id is null',
    );
    await organizationTable(
      runner,
      'usage_day',
      `meter_id uuid not null, day date not null, day_start timestamptz not null, start_seconds integer[] not null, length_seconds integer[] not null, volumes double precision[] not null, unit text not null, total_l double precision not null, least_l_per_min double precision, constraint usage_day_arrays_agree check (cardinality(start_seconds) = cardinality(length_seconds) and cardinality(start_seconds) = cardinality(volumes)), constraint usage_day_meter ${points('meter')}`,
      { key: 'meter_id, day' },
    );
    await organizationTable(
      runner,
      'bill',
      `meter_id uuid not null, start_on date not null, end_on date not null, volume double precision not null constraint bill_volume_not_negative check (volume >= 0), unit text not null, litres double precision not null, amount double precision, typed jsonb not null default '{}'::jsonb, constraint bill_once unique (organization_id, meter_id, start_on), constraint bill_ends_after_start check (end_on > start_on), constraint bill_meter ${points('meter')}`,
    );
    const volumes = ['allowed', 'needed', 'programmed', 'metered']
      .map((volume) => `${volume}_l double precision, ${volume}_sd_l double precision`)
      .join(', ');
    await organizationTable(
      runner,
      'month_account',
      `property_id uuid not null, meter_id uuid, month date not null constraint month_account_month_begins_one check (extract(day from month) = 1), through_on date not null, ${volumes}, over_l double precision, under_l double precision, above_need_l double precision, above_need_sd_l double precision, above_need_money double precision, detail jsonb not null, inputs_version text not null, computed_at timestamptz not null default now(), constraint month_account_once unique nulls not distinct (organization_id, property_id, month, meter_id), constraint month_account_property ${points('property')}, constraint month_account_meter ${points('meter')}`,
    );
    await runner.query('create index month_account_of_month on month_account (organization_id, month) where meter_id is null');
  }

  async down(runner: QueryRunner): Promise<void> {
    await dropTables(runner, ['month_account', 'bill', 'usage_day', 'reading']);
  }
}
