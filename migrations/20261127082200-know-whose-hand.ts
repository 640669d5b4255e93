import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Whether a safety officer gave the password under which a person chose the own one; of those on file nobody knows. */
export class KnowWhoseHand20261127082200 implements MigrationInterface {
  name = 'KnowWhoseHand20261127082200';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`ALTER TABLE "account" ADD "password_by_officer" boolean NOT NULL DEFAULT false`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`ALTER TABLE "account" DROP COLUMN "password_by_officer"`);
  }
}
