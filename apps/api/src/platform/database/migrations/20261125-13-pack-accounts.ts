import type { MigrationInterface, QueryRunner } from 'typeorm';

/** What an account says in detail in few bytes, kept beside its row. */
export class PackAccounts20261125130000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    // JSON text is read as such; the next computation packs it. Packed numbers do not compress.
    await runner.query(`alter table month_account alter column detail type bytea using convert_to(detail::text, 'UTF8')`);
    await runner.query('alter table month_account alter column detail set storage external');
  }

  async down(runner: QueryRunner): Promise<void> {
    // Packed accounts cannot be text again in SQL: they are computed anew.
    await runner.query('delete from month_account where get_byte(detail, 0) = 1');
    await runner.query(`alter table month_account alter column detail type jsonb using convert_from(detail, 'UTF8')::jsonb`);
  }
}
