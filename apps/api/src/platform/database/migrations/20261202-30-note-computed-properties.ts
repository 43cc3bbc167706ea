import type { MigrationInterface, QueryRunner } from 'typeorm';
import { dropTables, organizationTable, points } from './organization-table.js';

/** From what the accounts and findings of a property were last computed: where it is the same they stand. */
export class NoteComputedProperties20261202300000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await organizationTable(
      runner,
      'computed_property',
      `property_id uuid not null, inputs text not null, constraint computed_property_property ${points('property')}`,
      { key: 'property_id' },
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await dropTables(runner, ['computed_property']);
  }
}
