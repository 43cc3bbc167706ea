import type { MigrationInterface, QueryRunner } from 'typeorm';
import { APP_ROLE } from '../database-url.js';
import { dropTables, mayPoint, organizationTable, points } from './organization-table.js';

/** Reports go out by mail and by link, in the office's own dress; clients ask. Work in the background may wait for its hour. */
export class SendReports20261130510000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await organizationTable(
      runner,
      'report_mail',
      `report_id uuid not null, recipient text not null, state text not null default 'queued' constraint report_mail_state_known check (state in ('queued', 'sending', 'sent', 'refused', 'unknown', 'bounced')), attempts integer not null default 0, answer text, stop_hash bytea, next_try_at timestamptz not null default now(), tried_at timestamptz, sent_at timestamptz, created_at timestamptz not null default now(), constraint report_mail_once unique (organization_id, report_id, recipient), constraint report_mail_report ${points('water_report', 'report_id')}`,
    );
    await organizationTable(
      runner,
      'mail_stop',
      'email text not null, at timestamptz not null default now(), constraint mail_stop_once unique (organization_id, email)',
    );
    await organizationTable(
      runner,
      'share_link',
      `report_id uuid not null, token_hash bytea not null, expires_at timestamptz not null, revoked_at timestamptz, created_by uuid references person (id) on delete set null, created_at timestamptz not null default now(), constraint share_link_once unique (organization_id, token_hash), constraint share_link_report ${points('water_report', 'report_id')}`,
    );
    await organizationTable(
      runner,
      'share_visit',
      `share_link_id uuid not null, at timestamptz not null default now(), file text not null, device text, constraint share_visit_share_link ${points('share_link')}`,
    );
    await organizationTable(
      runner,
      'report_brand',
      `name text, colour text, logo bytea, contact text, version integer not null default 1, constraint report_brand_once unique (organization_id)`,
    );
    await organizationTable(
      runner,
      'client_question',
      `client_id uuid not null, property_id uuid, report_id uuid, question text not null, asked_by uuid references person (id) on delete set null, asked_at timestamptz not null default now(), answer text, answered_by uuid references person (id) on delete set null, answered_at timestamptz, constraint client_question_client ${points('client')}, constraint client_question_property ${mayPoint('property')}, constraint client_question_report ${mayPoint('water_report', 'report_id')}`,
    );
    await this.laterWork(runner);
  }

  private async laterWork(runner: QueryRunner): Promise<void> {
    await runner.query(`create function enqueue_job_at(task text, job_id uuid, at timestamptz) returns void language plpgsql security definer set search_path = pg_catalog as $$
      declare organization uuid := nullif(current_setting('app.organization_id', true), '')::uuid;
      begin
        if organization is null then raise exception 'enqueue_job_at needs an organization' using errcode = '42501'; end if;
        perform graphile_worker.add_job(task, json_build_object('organizationId', organization, 'jobId', job_id), queue_name := organization::text, run_at := at, max_attempts := 3);
      end $$`);
    await runner.query('revoke all on function enqueue_job_at(text, uuid, timestamptz) from public');
    await runner.query(`grant execute on function enqueue_job_at(text, uuid, timestamptz) to ${APP_ROLE}`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('drop function enqueue_job_at(text, uuid, timestamptz)');
    await dropTables(runner, ['client_question', 'report_brand', 'share_visit', 'share_link', 'mail_stop', 'report_mail']);
  }
}
