import type { MigrationInterface, QueryRunner } from 'typeorm';

/** A link that is asked for again under its name is told again: of the name only a hash is kept, and the salt gives no link without it. */
export class NameLinks20261215400000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('alter table share_link add column name_hash bytea, add column salt bytea, add column days integer');
    await runner.query('alter table share_link add constraint share_link_device_record_once unique (organization_id, name_hash)');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('alter table share_link drop column name_hash, drop column salt, drop column days');
  }
}
