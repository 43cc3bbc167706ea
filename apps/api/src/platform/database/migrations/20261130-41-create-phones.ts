import type { MigrationInterface, QueryRunner } from 'typeorm';
import { dropTables, organizationTable } from './organization-table.js';

/** What phones send: the journal of their operations, in the transaction of the effect, and when each was last heard of. */
export class CreatePhones20261130410000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await organizationTable(
      runner,
      'field_operation',
      `device_id uuid not null, device_seq integer not null constraint field_operation_device_seq_not_negative check (device_seq >= 0), kind text not null, payload_version integer not null constraint field_operation_payload_version_positive check (payload_version > 0), body text not null, body_hash text not null, saved_at timestamptz not null, received_at timestamptz not null default now(), person_id uuid references person (id) on delete set null, verdict text not null constraint field_operation_verdict_known check (verdict in ('applied', 'parallel', 'conflict', 'refused')), answer jsonb not null default '{}'::jsonb, settled_at timestamptz, settled_by uuid references person (id) on delete set null`,
    );
    await runner.query(
      `create index field_operation_open on field_operation (organization_id, received_at) where verdict in ('conflict', 'refused') and settled_at is null`,
    );
    await organizationTable(
      runner,
      'device',
      `person_id uuid references person (id) on delete cascade, name text, app_version text, heard_at timestamptz not null, waiting integer not null constraint device_waiting_not_negative check (waiting >= 0), photos_waiting integer not null constraint device_photos_waiting_not_negative check (photos_waiting >= 0), refused integer not null constraint device_refused_not_negative check (refused >= 0), oldest_waiting_at timestamptz`,
    );
    await runner.query(
      `alter table visit add column worked_minutes double precision constraint visit_worked_minutes_not_negative check (worked_minutes >= 0), add column materials jsonb not null default '[]'::jsonb, add column closed_by uuid constraint visit_closed_by references person (id) on delete set null`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('alter table visit drop column worked_minutes, drop column materials, drop column closed_by');
    await dropTables(runner, ['device', 'field_operation']);
  }
}
