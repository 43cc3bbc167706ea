import type { MigrationInterface, QueryRunner } from 'typeorm';
import { dropTables, organizationTable } from './organization-table.js';

/** What an organization plans programs by: its hours, and what thirst, waste, key presses and waterings cost it. One row each. */
export class AddPlanSettings20261130200000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await organizationTable(
      runner,
      'plan_setting',
      `version integer not null default 1, water_from text not null constraint plan_setting_water_from_clock check (water_from ~ '^([01][0-9]|2[0-3]):[0-5][0-9]$'), water_until text not null constraint plan_setting_water_until_clock check (water_until ~ '^([01][0-9]|2[0-3]):[0-5][0-9]$'), thirst double precision not null, waste double precision not null, key_press double precision not null, watering double precision not null, constraint plan_setting_once unique (organization_id), constraint plan_setting_hours check (water_from <> water_until), constraint plan_setting_order check (thirst >= waste and waste > 0 and key_press >= 0 and watering >= 0)`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await dropTables(runner, ['plan_setting']);
  }
}
