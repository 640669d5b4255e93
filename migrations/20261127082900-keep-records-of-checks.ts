import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Records of electrical and pre-use checks are kept with the dates as well: what has any is worked out anew when it is next asked for. */
export class KeepRecordsOfChecks20261127082900 implements MigrationInterface {
  name = 'KeepRecordsOfChecks20261127082900';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(anew);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(anew);
  }
}

const anew = `UPDATE item SET due_known = false WHERE due_known AND (EXISTS (SELECT FROM examination WHERE item_id = item.id AND data ? 'check')
  OR EXISTS (SELECT FROM rule WHERE rule.kind = 'examination' AND rule.data ? 'check' AND rule.data->'kinds' ? item.kind))`;
