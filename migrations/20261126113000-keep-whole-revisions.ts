import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * A released revision is kept whole: of its row nothing changes but that it is superseded. Nothing that is kept can be emptied. What is done on the
 * floor is done by the revision in force. The parts of a plan are made by its trigger alone, with the rights of the owner.
 */
export class KeepWholeRevisions20261126113000 implements MigrationInterface {
  name = 'KeepWholeRevisions20261126113000';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`CREATE OR REPLACE FUNCTION keep_released_plan() RETURNS trigger LANGUAGE plpgsql AS $$
      DECLARE wanted pack_plan;
      BEGIN
        IF OLD.state <> 'draft' THEN
          IF TG_OP = 'UPDATE' THEN
            wanted := OLD;
            IF OLD.state = 'released' AND NEW.state = 'superseded' THEN wanted.state := 'superseded'; END IF;
          END IF;
          IF TG_OP = 'DELETE' OR NEW IS DISTINCT FROM wanted THEN
            RAISE EXCEPTION 'a released revision never changes' USING ERRCODE = 'restrict_violation', CONSTRAINT = 'pack_plan_released_kept';
          END IF;
        END IF;
        IF TG_OP = 'DELETE' THEN RETURN OLD; END IF;
        RETURN NEW;
      END $$`);
    for (const table of [...appendOnly, ...notEmptied])
      await runner.query(
        `CREATE TRIGGER ${table}_not_emptied BEFORE TRUNCATE ON ${table} FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()`,
      );
    await runner.query(`CREATE FUNCTION refuse_after_superseded() RETURNS trigger LANGUAGE plpgsql AS $$
      DECLARE concerned uuid := CASE TG_OP WHEN 'DELETE' THEN OLD.plan_id ELSE NEW.plan_id END;
      BEGIN
        IF EXISTS (SELECT FROM pack_plan WHERE id = concerned AND state = 'superseded') THEN
          RAISE EXCEPTION 'a superseded revision takes no more records' USING ERRCODE = 'restrict_violation', CONSTRAINT = TG_TABLE_NAME || '_in_force';
        END IF;
        IF TG_OP = 'DELETE' THEN RETURN OLD; END IF;
        RETURN NEW;
      END $$`);
    for (const table of onTheFloor)
      await runner.query(
        `CREATE TRIGGER ${table}_in_force BEFORE INSERT OR UPDATE OR DELETE ON ${table} FOR EACH ROW EXECUTE FUNCTION refuse_after_superseded()`,
      );
    await runner.query('ALTER FUNCTION put_plan_parts() SECURITY DEFINER SET search_path = public, pg_temp');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('ALTER FUNCTION put_plan_parts() SECURITY INVOKER RESET search_path');
    await runner.query('DROP FUNCTION refuse_after_superseded() CASCADE');
    for (const table of [...appendOnly, ...notEmptied]) await runner.query(`DROP TRIGGER ${table}_not_emptied ON ${table}`);
    await runner.query(`CREATE OR REPLACE FUNCTION keep_released_plan() RETURNS trigger LANGUAGE plpgsql AS $$
      BEGIN
        IF OLD.state <> 'draft' AND (TG_OP = 'DELETE' OR NEW.plan IS DISTINCT FROM OLD.plan OR NEW.revision IS DISTINCT FROM OLD.revision
          OR NEW.released_at IS DISTINCT FROM OLD.released_at OR NEW.state = 'draft' OR (OLD.state = 'superseded' AND NEW.state <> 'superseded')) THEN
          RAISE EXCEPTION 'a released revision never changes' USING ERRCODE = 'restrict_violation', CONSTRAINT = 'pack_plan_released_kept';
        END IF;
        IF TG_OP = 'DELETE' THEN RETURN OLD; END IF;
        RETURN NEW;
      END $$`);
  }
}

const appendOnly = ['event', 'examination', 'incident', 'report_file', 'loading_act', 'load_reading', 'sign_off', 'hardware_count'];
const notEmptied = ['pack_plan', 'plan_part'];
const onTheFloor = ['tick', 'cart_check', 'load_reading', 'sign_off'];
