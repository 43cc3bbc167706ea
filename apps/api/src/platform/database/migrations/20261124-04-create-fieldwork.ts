import type { MigrationInterface, QueryRunner } from 'typeorm';
import { dropTables, mayPoint, organizationTable, points } from './organization-table.js';

const KINDS = `'overwatered', 'over-programmed', 'under-programmed', 'unexplained use', 'not delivering', 'steady flow', 'off-schedule run', 'watered in rain', 'zone flow changed', 'flow to be tested', 'over allowance', 'breaks a rule', 'doubtful reading', 'stale', 'mixed water needs'`;
const kept = { kept: true };

/** Findings and the work that answers them: crews, routes, stops, work orders, visits; the water reports. */
export class CreateFieldwork20261124040000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await this.findings(runner);
    await this.crews(runner);
    await this.work(runner);
    await organizationTable(
      runner,
      'water_report',
      `client_id uuid not null, from_on date not null, until_on date not null, state text not null default 'draft' constraint water_report_state_known check (state in ('draft', 'sent')), note text, sent_at timestamptz, constraint water_report_ends_after_start check (until_on >= from_on), constraint water_report_once unique (organization_id, client_id, from_on, until_on), constraint water_report_client ${points('client')}`,
      kept,
    );
  }

  private async findings(runner: QueryRunner): Promise<void> {
    await organizationTable(
      runner,
      'finding',
      `property_id uuid not null, meter_id uuid, controller_id uuid, zone_id uuid, kind text not null constraint finding_kind_known check (kind in (${KINDS})), cause_key text not null, state text not null default 'open' constraint finding_state_known check (state in ('open', 'in work', 'resolved', 'dismissed')), from_on date, until_on date, litres double precision, money double precision, confidence double precision constraint finding_confidence_is_share check (confidence between 0 and 1), says jsonb not null, evidence jsonb not null default '{}'::jsonb, opened_at timestamptz not null, came_back integer not null default 0, dismissed_why text, resolved_with text, acknowledged_until date, decided_by uuid references person (id) on delete set null, decided_at timestamptz, version integer not null default 1, constraint finding_property ${points('property')}, constraint finding_meter ${mayPoint('meter')}, constraint finding_controller ${mayPoint('controller')}, constraint finding_zone ${mayPoint('zone')}`,
    );
    // One cause, one finding: it is reopened, never doubled.
    await runner.query('create unique index finding_one_per_cause on finding (organization_id, property_id, cause_key)');
    await runner.query('create index finding_by_state on finding (organization_id, state)');
  }

  private async crews(runner: QueryRunner): Promise<void> {
    await organizationTable(
      runner,
      'crew',
      `name text not null constraint crew_name_given check (length(btrim(name)) > 0), constraint crew_name_once unique (organization_id, name)`,
      kept,
    );
    await organizationTable(
      runner,
      'crew_member',
      `crew_id uuid not null, member_id uuid not null, constraint crew_member_once unique (organization_id, crew_id, member_id), constraint crew_member_crew ${points('crew')}, constraint crew_member_member ${points('member')}`,
    );
    await organizationTable(
      runner,
      'route',
      `crew_id uuid not null, day date not null, note text, constraint route_once unique (organization_id, crew_id, day), constraint route_crew ${points('crew')}`,
      kept,
    );
    await organizationTable(
      runner,
      'stop',
      `route_id uuid not null, property_id uuid not null, position integer not null constraint stop_position_positive check (position >= 1), constraint stop_once unique (organization_id, route_id, property_id), constraint stop_route ${points('route')}, constraint stop_property ${points('property')}`,
      kept,
    );
  }

  private async work(runner: QueryRunner): Promise<void> {
    await organizationTable(
      runner,
      'work_order',
      `property_id uuid not null, finding_id uuid, controller_id uuid, meter_id uuid, zone_id uuid, stop_id uuid, kind text not null constraint work_order_kind_known check (kind in ('adjust', 'inspect', 'repair', 'read', 'upgrade', 'plant care')), state text not null default 'open' constraint work_order_state_known check (state in ('waiting for approval', 'open', 'given out', 'done', 'dropped')), what text not null default '', estimate_minutes double precision constraint work_order_estimate_not_negative check (estimate_minutes >= 0), labour_hours double precision constraint work_order_labour_not_negative check (labour_hours >= 0), labour_rate double precision constraint work_order_rate_not_negative check (labour_rate >= 0), parts jsonb not null default '[]'::jsonb, planned_settings_id uuid, done_note text, left_note text, done_at timestamptz, approved_by uuid references person (id) on delete set null, approved_at timestamptz, created_at timestamptz not null default now(), constraint work_order_property ${points('property')}, constraint work_order_finding ${mayPoint('finding')}, constraint work_order_controller ${mayPoint('controller')}, constraint work_order_meter ${mayPoint('meter')}, constraint work_order_zone ${mayPoint('zone')}, constraint work_order_stop ${mayPoint('stop')}, constraint work_order_planned_settings ${mayPoint('settings', 'planned_settings_id')}`,
      kept,
    );
    await runner.query('create index work_order_of_stop on work_order (organization_id, stop_id)');
    await runner.query(
      `create unique index work_order_one_open_per_finding on work_order (organization_id, finding_id, kind) where finding_id is not null and state in ('waiting for approval', 'open', 'given out')`,
    );
    await organizationTable(
      runner,
      'visit',
      `property_id uuid not null, stop_id uuid, crew_id uuid, arrived_at timestamptz not null, closed_at timestamptz, done_note text, left_note text, person_id uuid references person (id) on delete set null, device_record_id uuid, version integer not null default 1, constraint visit_device_record_once unique (organization_id, device_record_id), constraint visit_closes_after_arrival check (closed_at is null or closed_at >= arrived_at), constraint visit_property ${points('property')}, constraint visit_stop ${mayPoint('stop')}, constraint visit_crew ${mayPoint('crew')}`,
    );
    await organizationTable(
      runner,
      'zone_note',
      `visit_id uuid not null, zone_id uuid, kind text not null constraint zone_note_kind_known check (kind in ('broken head', 'leak', 'clogged', 'overspray', 'coverage', 'wilting', 'other')), count integer not null default 1 constraint zone_note_count_positive check (count >= 1), word text, repaired boolean not null default false, recorded_at timestamptz not null default now(), constraint zone_note_visit ${points('visit')}, constraint zone_note_zone ${mayPoint('zone')}`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await dropTables(runner, ['zone_note', 'visit', 'work_order', 'stop', 'route', 'crew_member', 'crew', 'finding', 'water_report']);
  }
}
