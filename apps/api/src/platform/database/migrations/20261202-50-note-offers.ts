import type { MigrationInterface, QueryRunner } from 'typeorm';

const COST = `coalesce(work_order.labour_hours * work_order.labour_rate, 0) + coalesce((select sum((part->>'count')::float8 * (part->>'price')::float8) from jsonb_array_elements(work_order.parts) part), 0)`;

/** Of some work the client asked for an offer: it waits for their word on its price, whatever they let be spent without asking. */
export class NoteOffers20261202500000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('alter table work_order add column is_offer boolean not null default false');
    // What waited though no limit asked for it waited for an offer.
    await runner.query(
      `update work_order set is_offer = true from property join client on client.organization_id = property.organization_id and client.id = property.client_id
        where property.organization_id = work_order.organization_id and property.id = work_order.property_id and work_order.state = 'waiting for approval' and (client.not_to_exceed is null or ${COST} <= client.not_to_exceed)`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('alter table work_order drop column is_offer');
  }
}
