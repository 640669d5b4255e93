import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Venues with ids of their own. Tours on file stay as they were written, with their venue as text: which venue that is stands beside them, one made for
 * each text that differs, in the time zone of its first show.
 */
export class CreateVenue20261126020500 implements MigrationInterface {
  name = 'CreateVenue20261126020500';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `CREATE TABLE "venue" ("id" uuid NOT NULL, "name" text NOT NULL, "city" text, "country" text, "time_zone" text NOT NULL, "data" jsonb NOT NULL, "version" integer NOT NULL, CONSTRAINT "venue_pkey" PRIMARY KEY ("id"))`,
    );
    await runner.query(
      `CREATE TABLE "show_venue" ("tour_id" text NOT NULL, "show_id" text NOT NULL, "venue_id" uuid NOT NULL, CONSTRAINT "show_venue_pkey" PRIMARY KEY ("tour_id", "show_id"))`,
    );
    await runner.query(`CREATE INDEX "show_venue_venue_index" ON "show_venue" ("venue_id")`);
    await runner.query(
      `ALTER TABLE "show_venue" ADD CONSTRAINT "show_venue_tour_fkey" FOREIGN KEY ("tour_id") REFERENCES "tour"("id") ON DELETE CASCADE ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "show_venue" ADD CONSTRAINT "show_venue_venue_fkey" FOREIGN KEY ("venue_id") REFERENCES "venue"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `INSERT INTO "venue" (id, name, time_zone, data, version)
       SELECT gen_random_uuid(), name, zone, jsonb_build_object('name', name, 'timeZone', zone, 'points', '[]'::jsonb, 'doors', '[]'::jsonb), 1
       FROM (SELECT DISTINCT ON (show->>'venue') show->>'venue' AS name, show->>'timeZone' AS zone
             FROM tour, jsonb_array_elements(data->'shows') AS show ORDER BY show->>'venue', show->>'from') AS told`,
    );
    await runner.query(
      `INSERT INTO "show_venue" (tour_id, show_id, venue_id)
       SELECT tour.id, show->>'id', venue.id FROM tour, jsonb_array_elements(tour.data->'shows') AS show JOIN venue ON venue.name = show->>'venue'`,
    );
    for (const [table, topics] of Object.entries(topicsOf)) await runner.query('SELECT tell_changes_of($1::regclass, $2)', [table, topics]);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE "show_venue"');
    await runner.query('DROP TABLE "venue"');
  }
}

const topicsOf = {
  venue: `SELECT 'venue/' || id FROM changed`,
  show_venue: `SELECT 'tour/' || tour_id FROM changed`,
} as const;
