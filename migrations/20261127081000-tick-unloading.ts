import type { MigrationInterface, QueryRunner } from 'typeorm';

const known = (kinds: readonly string[]) =>
  `ALTER TABLE "tick" ADD CONSTRAINT "tick_kind_known" CHECK (kind IN (${kinds.map((each) => `'${each}'`).join(', ')}))`;

const before = ['row', 'step-up', 'step-down', 'move', 'as written'];

/** Rows of a truck are ticked as they come off at the venue and as they go in again at the load-out, beside as they are loaded. */
export class TickUnloading20261127081000 implements MigrationInterface {
  name = 'TickUnloading20261127081000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER TABLE "tick" DROP CONSTRAINT "tick_kind_known"');
    await runner.query(known([...before, 'unload', 'load-out']));
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`DELETE FROM "tick" WHERE kind IN ('unload', 'load-out')`);
    await runner.query('ALTER TABLE "tick" DROP CONSTRAINT "tick_kind_known"');
    await runner.query(known(before));
  }
}
