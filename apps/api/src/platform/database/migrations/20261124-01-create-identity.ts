import type { MigrationInterface, QueryRunner } from 'typeorm';
import { APP_ROLE } from '../database-url.js';
import { dropTables, organizationTable, points } from './organization-table.js';

const ROLES = `'owner', 'office', 'crewLead', 'technician', 'client'`;

/** Organizations, people, members, sessions, invitations, the record of changes, background work. */
export class CreateIdentity20261124010000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await this.organizations(runner);
    await this.people(runner);
    await this.members(runner);
    await this.records(runner);
  }

  private async organizations(runner: QueryRunner): Promise<void> {
    await runner.query(`create table organization (
      id uuid primary key default gen_random_uuid(),
      name text not null constraint organization_name_given check (length(btrim(name)) between 1 and 200),
      units text not null default 'us' constraint organization_units_known check (units in ('us', 'metric')),
      language text not null default 'en' constraint organization_language_known check (language in ('en', 'es')),
      time_zone text not null default 'America/Los_Angeles',
      currency text not null default 'USD',
      least_confidence double precision not null default 0.9 constraint organization_confidence_is_share check (least_confidence between 0.5 and 0.999),
      least_litres double precision not null default 7570.823568 constraint organization_least_litres_not_negative check (least_litres >= 0),
      least_money double precision not null default 10 constraint organization_least_money_not_negative check (least_money >= 0),
      stands_still_on date,
      is_demo boolean not null default false,
      version integer not null default 1,
      created_at timestamptz not null default now(),
      constraint organization_name_once unique (name))`);
    await runner.query('alter table organization enable row level security');
    await runner.query('alter table organization force row level security');
    await runner.query(
      `create policy organization_only on organization using (id = nullif(current_setting('app.organization_id', true), '')::uuid) with check (id = nullif(current_setting('app.organization_id', true), '')::uuid)`,
    );
    await runner.query(`grant select, insert, update, delete on organization to ${APP_ROLE}`);
  }

  /** People and sessions belong to no organization: a person may be a member of several, and a session is looked up before one is known. */
  private async people(runner: QueryRunner): Promise<void> {
    await runner.query(`create table person (
      id uuid primary key default gen_random_uuid(),
      email text not null constraint person_email_lower check (email = lower(btrim(email)) and position('@' in email) > 1),
      name text not null, language text not null default 'en' constraint person_language_known check (language in ('en', 'es')),
      password_hash text, created_at timestamptz not null default now(),
      constraint person_email_once unique (email))`);
    await runner.query(`grant select, insert, update on person to ${APP_ROLE}`);
    await runner.query(`create table session (
      token_hash bytea primary key, person_id uuid not null references person (id) on delete cascade,
      organization_id uuid not null references organization (id) on delete cascade,
      created_at timestamptz not null default now(), last_seen_at timestamptz not null default now(), expires_at timestamptz not null, device text)`);
    await runner.query('create index session_of_person on session (person_id)');
    await runner.query(`grant select, insert, update, delete on session to ${APP_ROLE}`);
  }

  private async members(runner: QueryRunner): Promise<void> {
    await organizationTable(
      runner,
      'client',
      `name text not null constraint client_name_given check (length(btrim(name)) > 0), emails text[] not null default '{}', language text constraint client_language_known check (language in ('en', 'es')), units text constraint client_units_known check (units in ('us', 'metric')), not_to_exceed double precision constraint client_limit_not_negative check (not_to_exceed >= 0), constraint client_name_once unique (organization_id, name)`,
      { kept: true },
    );
    await organizationTable(
      runner,
      'member',
      `person_id uuid not null references person (id) on delete cascade, role text not null constraint member_role_known check (role in (${ROLES})), client_id uuid, version integer not null default 1, retired_at timestamptz, created_at timestamptz not null default now(), constraint member_once unique (organization_id, person_id), constraint member_client_goes_with_role check ((role = 'client') = (client_id is not null)), constraint member_client ${points('client')}`,
    );
    // A person may read their own memberships before an organization is chosen; the organizations' names with them.
    await runner.query(
      `create policy own_memberships on member for select using (person_id = nullif(current_setting('app.person_id', true), '')::uuid)`,
    );
    await runner.query(
      `create policy own_organizations on organization for select using (exists (select from member where member.organization_id = organization.id and member.person_id = nullif(current_setting('app.person_id', true), '')::uuid and member.retired_at is null))`,
    );
    await organizationTable(
      runner,
      'invitation',
      `email text not null, name text not null, language text not null default 'en', role text not null constraint invitation_role_known check (role in (${ROLES})), client_id uuid, token_hash bytea not null, expires_at timestamptz not null, accepted_at timestamptz, invited_by uuid references person (id) on delete set null, created_at timestamptz not null default now(), constraint invitation_client_goes_with_role check ((role = 'client') = (client_id is not null)), constraint invitation_client ${points('client')}`,
    );
  }

  private async records(runner: QueryRunner): Promise<void> {
    await organizationTable(
      runner,
      'change',
      `thing text not null, thing_id uuid not null, thing_version integer not null, deed text not null constraint change_deed_known check (deed in ('create', 'change', 'retire', 'restore')), before jsonb, after jsonb, person_id uuid references person (id) on delete set null, way text not null constraint change_way_known check (way in ('screen', 'import', 'job')), at timestamptz not null default now()`,
      { grants: ['select', 'insert', 'delete'] },
    );
    await runner.query('create index change_of_thing on change (organization_id, thing_id, at)');
    await organizationTable(
      runner,
      'background_job',
      `kind text not null, state text not null default 'queued' constraint background_job_state_known check (state in ('queued', 'running', 'done', 'failed')), done integer not null default 0, total integer not null default 0, says text, payload jsonb not null default '{}'::jsonb, person_id uuid references person (id) on delete set null, created_at timestamptz not null default now(), finished_at timestamptz, constraint background_job_progress_possible check (done >= 0 and total >= 0)`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await dropTables(runner, ['background_job', 'change', 'invitation', 'member', 'client', 'session', 'person', 'organization']);
  }
}
