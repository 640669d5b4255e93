import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Promises hang on the id of a tour or a hold, ticks on the parts of their key: a name may change. What was written by name finds its id here once; a
 * promise to a tour that is not on file keeps its name as all that is known, a tick that matches nothing in its plan keeps its text.
 */
export class KeyById20261126013000 implements MigrationInterface {
  name = 'KeyById20261126013000';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of [...bookings, ...ticks]) await runner.query(statement);
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const statement of back) await runner.query(statement);
  }
}

const bookings = [
  `ALTER TABLE "booking" ADD "holder_kind" text, ADD "holder_id" text`,
  `UPDATE "booking" SET holder_kind = 'tour', holder_id = tour.id FROM "tour" WHERE tour.name = tour_name AND hold_until IS NULL`,
  `UPDATE "booking" SET holder_kind = 'hold', holder_id = hold.id
     FROM (SELECT tour_name AS name, gen_random_uuid()::text AS id FROM "booking" WHERE hold_until IS NOT NULL GROUP BY tour_name) AS hold
     WHERE hold.name = tour_name AND hold_until IS NOT NULL`,
  `UPDATE "booking" SET holder_kind = 'named', holder_id = tour_name WHERE holder_kind IS NULL`,
  `ALTER TABLE "booking" ALTER "holder_kind" SET NOT NULL, ALTER "holder_id" SET NOT NULL`,
  `ALTER TABLE "booking" DROP CONSTRAINT "booking_item_tour_unique"`,
  `DROP INDEX "booking_tour_index"`,
  `ALTER TABLE "booking" ADD CONSTRAINT "booking_item_holder_unique" UNIQUE ("item_id", "holder_kind", "holder_id") DEFERRABLE INITIALLY DEFERRED`,
  `ALTER TABLE "booking" ADD CONSTRAINT "booking_holder_known" CHECK (holder_kind IN ('tour', 'named', 'hold'))`,
  `ALTER TABLE "booking" ADD CONSTRAINT "booking_hold_ends" CHECK ((holder_kind = 'hold') = (hold_until IS NOT NULL))`,
  `CREATE INDEX "booking_holder_index" ON "booking" ("holder_kind", "holder_id")`,
];

const ticks = [
  `ALTER TABLE "tick" ADD "kind" text, ADD "subject" text, ADD "place" integer`,
  `UPDATE "tick" SET kind = 'row', subject = truck->>'id', place = (row->>'number')::int
     FROM pack_plan, jsonb_array_elements(plan->'truck'->'trucks') AS truck, jsonb_array_elements(truck->'rows') AS row
     WHERE pack_plan.id = plan_id AND what = (truck->>'id') || ' row ' || (row->>'number')`,
  ...(['up', 'down'] as const).map(
    (way) => `UPDATE "tick" SET kind = 'step-${way}', subject = hang->>'hang', place = step.place
     FROM pack_plan, jsonb_array_elements(plan->'picks'->'hangs') AS hang,
       jsonb_array_elements(hang->'runningOrder'->'${way === 'up' ? 'goingUp' : 'comingDown'}') WITH ORDINALITY AS step(written, place)
     WHERE pack_plan.id = plan_id AND kind IS NULL AND what = step.written->>'key'`,
  ),
  `UPDATE "tick" SET kind = 'move', subject = '', place = (move->>'number')::int
     FROM pack_plan, jsonb_array_elements(plan->'carts'->'moves') AS move
     WHERE pack_plan.id = plan_id AND kind IS NULL AND what = 'move ' || (move->>'number')`,
  `UPDATE "tick" SET kind = 'as written', subject = what, place = 0 WHERE kind IS NULL`,
  `ALTER TABLE "tick" DROP CONSTRAINT "tick_pkey"`,
  `ALTER TABLE "tick" DROP COLUMN "what"`,
  `ALTER TABLE "tick" ALTER "kind" SET NOT NULL, ALTER "subject" SET NOT NULL, ALTER "place" SET NOT NULL`,
  `ALTER TABLE "tick" ADD CONSTRAINT "tick_pkey" PRIMARY KEY ("plan_id", "kind", "subject", "place")`,
  `ALTER TABLE "tick" ADD CONSTRAINT "tick_kind_known" CHECK (kind IN ('row', 'step-up', 'step-down', 'move', 'as written'))`,
];

const back = [
  `ALTER TABLE "tick" DROP CONSTRAINT "tick_kind_known"`,
  `ALTER TABLE "tick" DROP CONSTRAINT "tick_pkey"`,
  `ALTER TABLE "tick" ADD "what" text`,
  `UPDATE "tick" SET what = CASE kind WHEN 'row' THEN subject || ' row ' || place WHEN 'step-up' THEN subject || ' up ' || place
     WHEN 'step-down' THEN subject || ' down ' || place WHEN 'move' THEN 'move ' || place ELSE subject END`,
  `ALTER TABLE "tick" ALTER "what" SET NOT NULL, DROP COLUMN "kind", DROP COLUMN "subject", DROP COLUMN "place"`,
  `ALTER TABLE "tick" ADD CONSTRAINT "tick_pkey" PRIMARY KEY ("plan_id", "what")`,
  `DROP INDEX "booking_holder_index"`,
  `ALTER TABLE "booking" DROP CONSTRAINT "booking_hold_ends"`,
  `ALTER TABLE "booking" DROP CONSTRAINT "booking_holder_known"`,
  `ALTER TABLE "booking" DROP CONSTRAINT "booking_item_holder_unique"`,
  `ALTER TABLE "booking" ADD CONSTRAINT "booking_item_tour_unique" UNIQUE ("item_id", "tour_name") DEFERRABLE INITIALLY DEFERRED`,
  `CREATE INDEX "booking_tour_index" ON "booking" ("tour_name")`,
  `ALTER TABLE "booking" DROP COLUMN "holder_kind", DROP COLUMN "holder_id"`,
];
