import type { MigrationInterface, QueryRunner } from 'typeorm';
import { dropTables, organizationTable, points } from './organization-table.js';

/** What planning a month needs: a crew's hours, skills and start, a property's visit terms, locked stops, dates that work must be done by. */
export class PlanMonths20261130300000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `alter table crew
         add column skills text[] not null default '{}',
         add column start_latitude double precision constraint crew_start_latitude_on_earth check (start_latitude between -90 and 90),
         add column start_longitude double precision constraint crew_start_longitude_on_earth check (start_longitude between -180 and 180),
         add column working_days integer[] not null default '{1,2,3,4,5}' constraint crew_working_days_known check (working_days <@ '{1,2,3,4,5,6,7}'),
         add column day_starts_minute integer not null default 420 constraint crew_day_starts_minute_possible check (day_starts_minute between 0 and 1439),
         add column day_ends_minute integer not null default 930 constraint crew_day_ends_minute_possible check (day_ends_minute between 1 and 1440),
         add column break_minutes integer not null default 30 constraint crew_break_minutes_possible check (break_minutes between 0 and 600),
         add constraint crew_day_ends_after_start check (day_ends_minute > day_starts_minute)`,
    );
    await runner.query('alter table stop add column locked boolean not null default false');
    await runner.query(`alter table work_order add column due_on date, add column skills text[] not null default '{}'`);
    await organizationTable(
      runner,
      'visit_terms',
      `property_id uuid not null, every_days integer constraint visit_terms_every_days_positive check (every_days > 0), visit_minutes integer constraint visit_terms_visit_minutes_positive check (visit_minutes > 0), skills text[] not null default '{}', hours jsonb not null default '[]'::jsonb, constraint visit_terms_once unique (organization_id, property_id), constraint visit_terms_property ${points('property')}`,
      { kept: true },
    );
    await organizationTable(
      runner,
      'month_plan',
      `month date not null constraint month_plan_month_begins_one check (extract(day from month) = 1), made_at timestamptz not null, made_by uuid references person (id) on delete set null, undone_at timestamptz, travel jsonb not null, before jsonb not null, moved integer not null, unplaced jsonb not null`,
      { kept: true },
    );
    await runner.query('create index month_plan_latest on month_plan (organization_id, month, made_at desc)');
  }

  async down(runner: QueryRunner): Promise<void> {
    await dropTables(runner, ['month_plan', 'visit_terms']);
    await runner.query('alter table work_order drop column due_on, drop column skills');
    await runner.query('alter table stop drop column locked');
    await runner.query(
      'alter table crew drop column skills, drop column start_latitude, drop column start_longitude, drop column working_days, drop column day_starts_minute, drop column day_ends_minute, drop column break_minutes',
    );
  }
}
