import type { MigrationInterface, QueryRunner } from 'typeorm';

/** The log is read act by act, and of an act what concerns an item: an import of a hundred thousand rows is one act. */
export class IndexActs20261126220932 implements MigrationInterface {
  name = 'IndexActs20261126220932';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query('DROP INDEX "event_act_index"');
    await runner.query('CREATE INDEX "event_act_index" ON "event" ("act", "item_id")');
    await runner.query('DROP INDEX "event_said_index"');
    await runner.query(`CREATE INDEX "event_said_index" ON "event" ("id", "act") WHERE what <> 'row'`);
    await runner.query(`CREATE INDEX "event_told_index" ON "event" ("act", "id") WHERE what <> 'row'`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP INDEX "event_told_index", "event_act_index", "event_said_index"');
    await runner.query(`CREATE INDEX "event_said_index" ON "event" ("id") WHERE what <> 'row'`);
    await runner.query('CREATE INDEX "event_act_index" ON "event" ("act")');
  }
}
