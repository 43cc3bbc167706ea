import type { MigrationInterface, QueryRunner } from 'typeorm';
import { dropTables, organizationTable, points } from './organization-table.js';

/** Phones of one crew that arrive at the same stop speak of one visit, each by the name that it gave; the office is shown what ran beside. */
export class KeepArrivals20261202700000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await organizationTable(
      runner,
      'arrival',
      `visit_id uuid not null, person_id uuid references person (id) on delete set null, arrived_at timestamptz not null, constraint arrival_visit ${points('visit')}`,
    );
    await runner.query('create index arrival_of_visit on arrival (organization_id, visit_id)');
    await runner.query(
      'insert into arrival (organization_id, id, visit_id, person_id, arrived_at) select organization_id, device_record_id, id, person_id, arrived_at from visit where device_record_id is not null',
    );
    await runner.query('drop index field_operation_open');
    await runner.query(
      `create index field_operation_open on field_operation (organization_id, received_at) where verdict in ('conflict', 'refused', 'parallel') and settled_at is null`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('drop index field_operation_open');
    await runner.query(
      `create index field_operation_open on field_operation (organization_id, received_at) where verdict in ('conflict', 'refused') and settled_at is null`,
    );
    await dropTables(runner, ['arrival']);
  }
}
