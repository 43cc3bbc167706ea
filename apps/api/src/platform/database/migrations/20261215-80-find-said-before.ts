import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Whose phone said another word is looked up in the journal by what was said and when. */
export class FindSaidBefore20261215800000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('create index field_operation_said on field_operation (organization_id, kind, saved_at)');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('drop index field_operation_said');
  }
}
