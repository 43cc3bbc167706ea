import type { MigrationInterface, QueryRunner } from 'typeorm';

const INDEX =
  'create unique index water_report_once on water_report (organization_id, client_id, property_id, from_on, until_on) nulls not distinct';

/** What was sent is corrected by a new report of the same period; every mail's link to stop mails goes on working. */
export class CorrectReports20261201550000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('drop index water_report_once');
    await runner.query(`${INDEX} where retired_at is null and state <> 'sent'`);
    await runner.query(`alter table report_mail add column former_stop_hashes bytea[] not null default '{}'`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('alter table report_mail drop column former_stop_hashes');
    await runner.query('drop index water_report_once');
    // Of two of one period the one that was sent is the one in use.
    await runner.query(
      `update water_report set retired_at = now() where retired_at is null and exists (select from water_report other where other.retired_at is null and other.id <> water_report.id and (other.organization_id, other.client_id, other.from_on, other.until_on) = (water_report.organization_id, water_report.client_id, water_report.from_on, water_report.until_on) and other.property_id is not distinct from water_report.property_id and (other.state = 'sent', other.id) > (water_report.state = 'sent', water_report.id))`,
    );
    await runner.query(`${INDEX} where retired_at is null`);
  }
}
