import type { MigrationInterface, QueryRunner } from 'typeorm';

/** How long a zone's line takes to fill at each start; nobody says it of the zones that are there. */
export class FillLines20261210300000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      'alter table zone add column fill_minutes double precision constraint zone_fill_minutes_not_negative check (fill_minutes >= 0)',
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('alter table zone drop column fill_minutes');
  }
}
