import type { MigrationInterface, QueryRunner } from 'typeorm';

/** A work order may be to pause a controller, until an instant. */
export class OrderPauses20261202100000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('alter table work_order add column pause_until timestamptz');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('alter table work_order drop column pause_until');
  }
}
