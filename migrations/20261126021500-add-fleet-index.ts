import type { MigrationInterface, QueryRunner } from 'typeorm';

/** The fleet is counted on an index alone; of hired boxes there are few. Promises are found by their days. */
export class AddFleetIndex20261126021500 implements MigrationInterface {
  name = 'AddFleetIndex20261126021500';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `CREATE INDEX "item_fleet_index" ON "item" ("model", "state", "depot", "due_state", "due_on", "due_holds_through") WHERE kind = 'box' AND state <> 'retired' AND NOT rest ? 'hire'`,
    );
    await runner.query(`CREATE INDEX "item_hired_index" ON "item" ("model") WHERE kind = 'box' AND state <> 'retired' AND rest ? 'hire'`);
    await runner.query(`CREATE INDEX "booking_period_index" ON "booking" USING gist ("period")`);
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const name of ['item_fleet_index', 'item_hired_index', 'booking_period_index']) await runner.query(`DROP INDEX "${name}"`);
  }
}
