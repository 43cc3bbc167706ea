import type { MigrationInterface, QueryRunner } from 'typeorm';

const BEFORE = `'overwatered', 'over-programmed', 'under-programmed', 'unexplained use', 'not delivering', 'steady flow', 'off-schedule run', 'watered in rain', 'zone flow changed', 'flow to be tested', 'over allowance', 'breaks a rule', 'doubtful reading', 'stale', 'mixed water needs'`;

const known = (runner: QueryRunner, kinds: string) =>
  runner.query(`alter table finding drop constraint finding_kind_known, add constraint finding_kind_known check (kind in (${kinds}))`);

/** What a crew sees is a finding too. */
export class SeeOnSite20261201310000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await known(runner, `${BEFORE}, 'seen on site'`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`delete from finding where kind = 'seen on site'`);
    await known(runner, BEFORE);
  }
}
