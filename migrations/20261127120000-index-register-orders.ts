import type { MigrationInterface, QueryRunner } from 'typeorm';

const lastDay = `(coalesce(due_on, 'infinity'::date)), "id"`;

/** The register is read by depot and by last day of use in order, without the rest of it. */
export class IndexRegisterOrders20261127120000 implements MigrationInterface {
  name = 'IndexRegisterOrders20261127120000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`CREATE INDEX "item_depot_index" ON "item" ("depot", "id")`);
    await runner.query(`CREATE INDEX "item_last_day_index" ON "item" (${lastDay})`);
    await runner.query(`CREATE INDEX "item_kind_last_day_index" ON "item" ("kind", ${lastDay})`);
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const name of ['item_depot_index', 'item_last_day_index', 'item_kind_last_day_index']) await runner.query(`DROP INDEX "${name}"`);
  }
}
