import type { MigrationInterface, QueryRunner } from 'typeorm';
import { APP_ROLE } from '../database-url.js';

/** The one door by which the application puts work into the queue: in its own transaction, for its own organization only. */
export class CreateJobQueue20261124050000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`create function enqueue_job(task text, job_id uuid) returns void language plpgsql security definer set search_path = pg_catalog as $$
      declare organization uuid := nullif(current_setting('app.organization_id', true), '')::uuid;
      begin
        if organization is null then raise exception 'enqueue_job needs an organization' using errcode = '42501'; end if;
        perform graphile_worker.add_job(task, json_build_object('organizationId', organization, 'jobId', job_id), queue_name := organization::text, max_attempts := 3);
      end $$`);
    await runner.query('revoke all on function enqueue_job(text, uuid) from public');
    await runner.query(`grant execute on function enqueue_job(text, uuid) to ${APP_ROLE}`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('drop function enqueue_job(text, uuid)');
  }
}
