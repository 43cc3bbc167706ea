import type { MigrationInterface, QueryRunner } from 'typeorm';

const KEY = '(organization_id, client_id, property_id, from_on, until_on)';

/** One report in use of a client, property and period: one that was taken away does not stand in the way of a new one. */
export class DraftAgain20261201500000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('alter table water_report drop constraint water_report_once');
    await runner.query(`create unique index water_report_once on water_report ${KEY} nulls not distinct where retired_at is null`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('drop index water_report_once');
    await runner.query(
      `delete from water_report where retired_at is not null and exists (select from water_report other where other.id <> water_report.id and (other.organization_id, other.client_id, other.from_on, other.until_on) = (water_report.organization_id, water_report.client_id, water_report.from_on, water_report.until_on) and other.property_id is not distinct from water_report.property_id)`,
    );
    await runner.query(`alter table water_report add constraint water_report_once unique nulls not distinct ${KEY}`);
  }
}
