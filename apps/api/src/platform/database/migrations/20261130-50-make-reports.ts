import type { MigrationInterface, QueryRunner } from 'typeorm';
import { dropTables, organizationTable, points } from './organization-table.js';

/** Reports for one property or for all of a client, that are approved; and what was made of each, kept as it was sent. */
export class MakeReports20261130500000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `alter table water_report add column property_id uuid, add column approved_at timestamptz, add column approved_by uuid references person (id) on delete set null, add column send_at timestamptz,
        add constraint water_report_property ${points('property')},
        drop constraint water_report_once,
        add constraint water_report_once unique nulls not distinct (organization_id, client_id, property_id, from_on, until_on),
        drop constraint water_report_state_known,
        add constraint water_report_state_known check (state in ('draft', 'approved', 'sent'))`,
    );
    await organizationTable(
      runner,
      'report_edition',
      `report_id uuid not null, data_version text not null, made_at timestamptz not null default now(), model bytea not null, pdf bytea not null, constraint report_edition_once unique (organization_id, report_id), constraint report_edition_report ${points('water_report', 'report_id')}`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await dropTables(runner, ['report_edition']);
    await runner.query(`delete from water_report where property_id is not null`);
    await runner.query(`update water_report set state = 'draft' where state = 'approved'`);
    await runner.query(
      `alter table water_report drop column property_id, drop column approved_at, drop column approved_by, drop column send_at, drop constraint water_report_state_known, add constraint water_report_state_known check (state in ('draft', 'sent')), add constraint water_report_once unique (organization_id, client_id, from_on, until_on)`,
    );
  }
}
