import type { MigrationInterface, QueryRunner } from 'typeorm';

const triggers = (todo: string) => `DO $do$
DECLARE each regprocedure;
BEGIN
  FOR each IN SELECT oid FROM pg_proc WHERE pronamespace = 'public'::regnamespace AND prorettype = 'trigger'::regtype
    AND NOT EXISTS (SELECT FROM pg_depend WHERE objid = pg_proc.oid AND classid = 'pg_proc'::regclass AND deptype = 'e')
  LOOP EXECUTE format('ALTER FUNCTION %s ${todo}', each); END LOOP;
END $do$`;

/** Triggers read the tables of the house, whatever temporary tables of the same names whoever writes has made before. */
export class KeepTriggersToTheirTables20261127091500 implements MigrationInterface {
  name = 'KeepTriggersToTheirTables20261127091500';

  async up(runner: QueryRunner): Promise<void> {
    await runner.query(triggers('SET search_path = pg_catalog, public, pg_temp'));
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(triggers('RESET search_path'));
  }
}
