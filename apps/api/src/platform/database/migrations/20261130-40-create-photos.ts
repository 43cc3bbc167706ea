import type { MigrationInterface, QueryRunner } from 'typeorm';
import { dropTables, mayPoint, organizationTable, points } from './organization-table.js';

/** Photos of field work: told of first, their picture comes after. And who noted what in a zone. */
export class CreatePhotos20261130400000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await organizationTable(
      runner,
      'photo',
      `property_id uuid not null, visit_id uuid, zone_id uuid, finding_id uuid, work_order_id uuid, kind text not null constraint photo_kind_known check (kind in ('before', 'after', 'meter', 'controller', 'seen', 'other')), word text, taken_at timestamptz not null, person_id uuid references person (id) on delete set null, announced_at timestamptz not null default now(), arrived_at timestamptz, sent_sha256 text constraint photo_sent_sha256_possible check (sent_sha256 ~ '^[0-9a-f]{64}$'), file_sha256 text constraint photo_file_sha256_possible check (file_sha256 ~ '^[0-9a-f]{64}$'), file_bytes integer constraint photo_file_bytes_positive check (file_bytes > 0), width integer constraint photo_width_positive check (width > 0), height integer constraint photo_height_positive check (height > 0), constraint photo_arrives_whole check (num_nulls(arrived_at, sent_sha256, file_sha256, file_bytes, width, height) in (0, 6)), constraint photo_property ${points('property')}, constraint photo_visit ${mayPoint('visit')}, constraint photo_zone ${mayPoint('zone')}, constraint photo_finding ${mayPoint('finding')}, constraint photo_work_order ${mayPoint('work_order')}`,
    );
    await runner.query('create index photo_of_visit on photo (organization_id, visit_id)');
    await runner.query('create index photo_of_property on photo (organization_id, property_id, taken_at)');
    await runner.query('create index photo_of_finding on photo (organization_id, finding_id) where finding_id is not null');
    await runner.query(
      'alter table zone_note add column person_id uuid constraint zone_note_person references person (id) on delete set null',
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('alter table zone_note drop column person_id');
    await dropTables(runner, ['photo']);
  }
}
