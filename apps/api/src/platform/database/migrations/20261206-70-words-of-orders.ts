import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Of what the product itself wrote an order's words, so that a report tells them in its own language. */
export class WordsOfOrders20261206700000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `alter table work_order add column words_of text constraint work_order_words_known check (words_of in ('finding', 'season'))`,
    );
    // What a client's yes made, and a season's orders, are known by how they begin; what was written of other findings is not.
    await runner.query(
      `update work_order set words_of = 'finding'
        where finding_id is not null and kind = 'upgrade'
          and (what like 'Separate lines for plants with different needs%' or what like 'Líneas separadas para plantas con necesidades distintas%')`,
    );
    await runner.query(
      `update work_order set words_of = 'season'
        where finding_id is null and planned_settings_id is not null
          and (what like 'Set the controller as planned for %' or what like 'Ajustar el controlador como está planeado para %')`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('alter table work_order drop column words_of');
  }
}
