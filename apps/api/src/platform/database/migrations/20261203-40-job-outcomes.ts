import type { MigrationInterface, QueryRunner } from 'typeorm';

/** How background work ended, as a code with its details: pages say it in the person's own language. */
export class JobOutcomes20261203400000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('alter table background_job add column outcome jsonb');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('alter table background_job drop column outcome');
  }
}
