import type { MigrationInterface, QueryRunner } from 'typeorm';

const order = `(state = 'in service' AND due_on IS NOT NULL), (coalesce(due_on, '-infinity'::date)), "id"`;
const examined = `due_state IS NOT NULL AND state <> 'retired'`;

/** The due list of one depot or of one kind is read in its order without the rest of the register. */
export class IndexDueList20261126230800 implements MigrationInterface {
  name = 'IndexDueList20261126230800';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`CREATE INDEX "item_due_depot_index" ON "item" ("depot", ${order}) WHERE ${examined}`);
    await runner.query(`CREATE INDEX "item_due_kind_index" ON "item" ("kind", ${order}) WHERE ${examined}`);
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const name of ['item_due_depot_index', 'item_due_kind_index']) await runner.query(`DROP INDEX "${name}"`);
  }
}
