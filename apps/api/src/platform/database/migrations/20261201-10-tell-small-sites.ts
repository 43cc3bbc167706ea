import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * A new organization is told from 200 gallons and 1 of its money a month, not from 2,000 and 10: a tenth of what a small yard uses is less than that. Those
 * that are there keep what they chose or were given.
 */
export class TellSmallSites20261201100000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      'alter table organization alter column least_litres set default 757.0823568, alter column least_money set default 1',
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(
      'alter table organization alter column least_litres set default 7570.823568, alter column least_money set default 10',
    );
  }
}
