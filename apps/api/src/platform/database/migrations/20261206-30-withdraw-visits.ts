import type { MigrationInterface, QueryRunner } from 'typeorm';

/** An arrival by mistake is taken back: the visit is kept as withdrawn, and counts nowhere. */
export class WithdrawVisits20261206300000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      'alter table visit add column withdrawn_at timestamptz, add column withdrawn_by uuid constraint visit_withdrawn_by references person (id) on delete set null',
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('alter table visit drop column withdrawn_at, drop column withdrawn_by');
  }
}
