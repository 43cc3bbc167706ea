import type { MigrationInterface, QueryRunner } from 'typeorm';

/** A mail of which nobody knew may have arrived, and stays so when it is sent again: its report is not taken back. */
export class RememberUnknownMails20261210510000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('alter table report_mail add column may_have_arrived boolean not null default false');
    await runner.query(`update report_mail set may_have_arrived = true where state = 'unknown'`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('alter table report_mail drop column may_have_arrived');
  }
}
