import type { MigrationInterface, QueryRunner } from 'typeorm';

/** What was asked together is found by its batch, and shown by the first of it: looking at it does not grow with all that was ever asked. */
export class FindBatches20261210500000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      'alter table background_job add column batch text, add column leads boolean not null default true, add column together jsonb',
    );
    await runner.query(`update background_job set batch = payload->>'batch' where payload ? 'batch'`);
    await runner.query(`update background_job job set leads = false where batch is not null
      and exists (select from background_job first where first.organization_id = job.organization_id and first.batch = job.batch and (first.created_at, first.id) < (job.created_at, job.id))`);
    await runner.query('create index background_job_batch on background_job (organization_id, batch) where batch is not null');
    await runner.query(
      `create index background_job_open on background_job (organization_id, batch) where batch is not null and state in ('queued', 'running')`,
    );
    await runner.query('create index background_job_first on background_job (organization_id, batch) where leads and batch is not null');
    await runner.query('create index background_job_leads on background_job (organization_id, created_at desc, id) where leads');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('drop index background_job_leads');
    await runner.query('drop index background_job_first');
    await runner.query('drop index background_job_open');
    await runner.query('drop index background_job_batch');
    await runner.query('alter table background_job drop column together, drop column leads, drop column batch');
  }
}
