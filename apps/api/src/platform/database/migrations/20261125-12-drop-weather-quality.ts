import type { MigrationInterface, QueryRunner } from 'typeorm';

/** A value's marks follow from the days around it: they are judged when a day is read, and not kept beside it. */
export class DropWeatherQuality20261125120000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('alter table weather_day drop column quality');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`alter table weather_day add column quality jsonb not null default '{}'::jsonb`);
  }
}
