import type { MigrationInterface, QueryRunner } from 'typeorm';

/** The newest work of an organization is found without sorting all that it ever had: pages ask for it again and again. */
export class FindJobs20261206710000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('create index background_job_newest on background_job (organization_id, created_at desc, id)');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('drop index background_job_newest');
  }
}
