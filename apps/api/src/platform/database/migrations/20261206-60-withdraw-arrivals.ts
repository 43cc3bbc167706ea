import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Each who came takes back their own arrival: the visit stands as long as one of them stands. And a photo may keep where it was taken. */
export class WithdrawArrivals20261206600000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('alter table arrival add column withdrawn_at timestamptz');
    await runner.query(
      'update arrival set withdrawn_at = visit.withdrawn_at from visit where visit.organization_id = arrival.organization_id and visit.id = arrival.visit_id and visit.withdrawn_at is not null',
    );
    await runner.query(
      `alter table photo add column latitude double precision constraint photo_latitude_possible check (latitude between -90 and 90),
         add column longitude double precision constraint photo_longitude_possible check (longitude between -180 and 180),
         add constraint photo_place_whole check (num_nulls(latitude, longitude) in (0, 2))`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('alter table photo drop column latitude, drop column longitude');
    await runner.query('alter table arrival drop column withdrawn_at');
  }
}
