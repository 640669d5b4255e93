import type { MigrationInterface, QueryRunner } from 'typeorm';

/** An answer to a hundred thousand proposals is one act in many short transactions: who signed it in `answering`, its portions in `answering_part`. */
export class CreateAnswering20261127115000 implements MigrationInterface {
  name = 'CreateAnswering20261127115000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `CREATE TABLE "answering" ("id" uuid NOT NULL, "number" BIGSERIAL NOT NULL, "is_accepted" boolean NOT NULL, "reason" text NOT NULL, "asked_by_id" uuid NOT NULL, "deputy_of_id" uuid, "asked_at" TIMESTAMP WITH TIME ZONE NOT NULL, "total" integer NOT NULL, "is_going" boolean NOT NULL, "alive_until" TIMESTAMP WITH TIME ZONE NOT NULL, "ended_at" TIMESTAMP WITH TIME ZONE, CONSTRAINT "answering_pkey" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE UNIQUE INDEX "answering_one_at_a_time" ON "answering" ("is_going") WHERE is_going`);
    await runner.query(
      `CREATE TABLE "answering_part" ("answering_id" uuid NOT NULL, "number" integer NOT NULL, "ids" bigint array NOT NULL, "answered" integer, "left_because" text array, CONSTRAINT "answering_part_pkey" PRIMARY KEY ("answering_id", "number"))`,
    );
    await runner.query(
      `ALTER TABLE "answering_part" ADD CONSTRAINT "answering_part_answering_fkey" FOREIGN KEY ("answering_id") REFERENCES "answering"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE "answering_part"');
    await runner.query('DROP TABLE "answering"');
  }
}
