import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Tours and shows that are removed are kept, out of sight, and can be put back. */
export class KeepRemoved20261126141800 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`ALTER TABLE "tour" ADD "removed_at" TIMESTAMP WITH TIME ZONE, ADD "removed_by_id" uuid`);
    await runner.query(
      `CREATE TABLE "removed_show" ("tour_id" text NOT NULL, "show_id" text NOT NULL, "data" jsonb NOT NULL, "removed_at" TIMESTAMP WITH TIME ZONE NOT NULL, "removed_by_id" uuid, CONSTRAINT "removed_show_pkey" PRIMARY KEY ("tour_id", "show_id"))`,
    );
    await runner.query(
      `ALTER TABLE "removed_show" ADD CONSTRAINT "removed_show_tour_fkey" FOREIGN KEY ("tour_id") REFERENCES "tour"("id") ON DELETE CASCADE ON UPDATE NO ACTION`,
    );
    await runner.query(`SELECT tell_changes_of('removed_show'::regclass, $1)`, [`SELECT 'tour/' || tour_id FROM changed`]);
    await replaceInPersonLeaves(runner, places, placesWithShows);
  }

  async down(runner: QueryRunner): Promise<void> {
    await replaceInPersonLeaves(runner, placesWithShows, places);
    await runner.query('DROP TABLE "removed_show"');
    await runner.query('ALTER TABLE "tour" DROP COLUMN "removed_by_id", DROP COLUMN "removed_at"');
  }
}

const places = `('tour', 'written')`;
const placesWithShows = `('tour', 'written'), ('removed_show', 'data')`;

/** The places in which names of people who leave are looked for. */
async function replaceInPersonLeaves(runner: QueryRunner, from: string, to: string): Promise<void> {
  const [{ body }] = (await runner.query(`SELECT pg_get_functiondef('person_leaves(uuid)'::regprocedure) AS body`)) as [{ body: string }];
  if (!body.includes(from)) throw new Error(`person_leaves does not look into ${from}`);
  await runner.query(body.replace(from, to));
}
