import type { MigrationInterface, QueryRunner } from 'typeorm';
import { dropTables, mayPoint, organizationTable, points } from './organization-table.js';

/** Tests of zones at a visit: the flow by the meter, the evenness by cans. */
export class CreateZoneTests20261201300000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await organizationTable(
      runner,
      'zone_test',
      `property_id uuid not null, visit_id uuid, zone_id uuid not null, kind text not null constraint zone_test_kind_known check (kind in ('flow', 'catch')), tested_at timestamptz not null, minutes double precision constraint zone_test_minutes_positive check (minutes > 0), meter_id uuid, register_before double precision constraint zone_test_register_before_not_negative check (register_before >= 0), register_after double precision constraint zone_test_register_after_not_negative check (register_after >= 0), flow_l_per_min double precision constraint zone_test_flow_l_per_min_not_negative check (flow_l_per_min >= 0), flow_sd_l_per_min double precision constraint zone_test_flow_sd_l_per_min_not_negative check (flow_sd_l_per_min >= 0), catches_ml double precision[] not null default '{}', mouth_m2 double precision constraint zone_test_mouth_m2_positive check (mouth_m2 > 0), du_lq double precision constraint zone_test_du_lq_is_share check (du_lq between 0 and 1), rate_mm_per_h double precision constraint zone_test_rate_mm_per_h_not_negative check (rate_mm_per_h >= 0), word text, on_record boolean not null, person_id uuid references person (id) on delete set null, received_at timestamptz not null default now(), constraint zone_test_is_whole check (case kind when 'flow' then num_nulls(minutes, register_before, register_after, flow_l_per_min) = 0 else du_lq is not null and cardinality(catches_ml) > 0 end), constraint zone_test_property ${points('property')}, constraint zone_test_zone ${points('zone')}, constraint zone_test_visit ${mayPoint('visit')}, constraint zone_test_meter ${mayPoint('meter')}`,
    );
    await runner.query('create index zone_test_of_zone on zone_test (organization_id, zone_id, kind, tested_at)');
    await runner.query('create index zone_test_of_visit on zone_test (organization_id, visit_id)');
  }

  async down(runner: QueryRunner): Promise<void> {
    await dropTables(runner, ['zone_test']);
  }
}
