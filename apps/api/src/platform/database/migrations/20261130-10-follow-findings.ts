import type { MigrationInterface, QueryRunner } from 'typeorm';

const REASONS = `'hand watering known', 'meter known to be off', 'client wants it', 'looked after', 'numbers are wrong', 'not worth the trip', 'not useful', 'other'`;

/** Findings through time: when their evidence ended, what they were before, who silenced them, and why in one of a few words. */
export class FollowFindings20261130100000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `alter table finding add column cleared_at timestamptz, add column cause_family text not null default '', add column history jsonb not null default '[]'::jsonb,
        add column dismissed_reason text constraint finding_dismissed_reason_known check (dismissed_reason in (${REASONS})),
        add column acknowledged_at timestamptz, add column acknowledged_note text, add column acknowledged_by uuid references person (id) on delete set null`,
    );
    await runner.query(`update finding set cause_family = coalesce(evidence ->> 'causeFamily', cause_key)`);
    await runner.query(`update finding set dismissed_reason = 'other' where state = 'dismissed'`);
    // What months say of settings is kept beside their accounts, so that findings put them together without unpacking.
    await runner.query('alter table month_account add column judged bytea');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('alter table month_account drop column judged');
    await runner.query(
      'alter table finding drop column cleared_at, drop column cause_family, drop column history, drop column dismissed_reason, drop column acknowledged_at, drop column acknowledged_note, drop column acknowledged_by',
    );
  }
}
