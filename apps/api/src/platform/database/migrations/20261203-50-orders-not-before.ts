import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Work that must wait for its day, as next month's settings must. */
export class OrdersNotBefore20261203500000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      'alter table work_order add column not_before date, add constraint work_order_ends_after_start check (due_on is null or not_before is null or not_before <= due_on)',
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('alter table work_order drop column not_before');
  }
}
