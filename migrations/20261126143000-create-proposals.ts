import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * Two pairs of eyes: what is proposed and by whom it is accepted, and every edition of what is guarded with the values before it. Models, rules and
 * items that nobody has accepted yet are on file and not used; everything that was on file before is accepted.
 */
export class CreateProposals20261126143000 implements MigrationInterface {
  name = 'CreateProposals20261126143000';

  async up(runner: QueryRunner): Promise<void> {
    for (const statement of statements) await runner.query(statement);
    await runner.query('SELECT tell_changes_of($1::regclass, $2)', [
      'proposal',
      `SELECT 'proposals' FROM changed UNION ALL ${subjectsTold}`,
    ]);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('DROP TABLE "proposal"');
    await runner.query('DROP TABLE "edition"');
    await runner.query('DROP FUNCTION proposal_stays()');
    for (const table of ['model', 'rule', 'item']) await runner.query(`ALTER TABLE "${table}" DROP COLUMN "is_accepted"`);
  }
}

/** What is proposed of an item is read on its page, of a model or a rule in the catalogue. */
const subjectsTold = `SELECT CASE WHEN kind IN ('item', 'record') THEN CASE WHEN (SELECT count(DISTINCT subject) FROM changed) > 50 THEN 'item' ELSE 'item/' || subject END ELSE 'catalogue' END FROM changed`;

const kinds = `('model', 'item', 'record', 'system', 'load rule', 'examination rule')`;

const statements = [
  ...['model', 'rule', 'item'].map((table) => `ALTER TABLE "${table}" ADD "is_accepted" boolean NOT NULL DEFAULT true`),
  `CREATE TABLE "edition" ("id" bigint GENERATED ALWAYS AS IDENTITY NOT NULL, "kind" text NOT NULL, "subject" text NOT NULL, "number" integer NOT NULL, "changes" jsonb NOT NULL, "reason" text, "made_by_id" uuid, "made_at" TIMESTAMP WITH TIME ZONE NOT NULL, CONSTRAINT "edition_kind_known" CHECK (kind IN ${kinds}), CONSTRAINT "edition_pkey" PRIMARY KEY ("id"))`,
  `CREATE UNIQUE INDEX "edition_subject_unique" ON "edition" ("kind", "subject", "number")`,
  `CREATE TRIGGER edition_append_only BEFORE UPDATE OR DELETE ON edition FOR EACH ROW EXECUTE FUNCTION refuse_change()`,
  `CREATE TABLE "proposal" ("id" bigint GENERATED ALWAYS AS IDENTITY NOT NULL, "kind" text NOT NULL, "subject" text NOT NULL, "field" text NOT NULL, "was" jsonb, "wanted" jsonb, "reason" text, "proposed_by_id" uuid, "proposed_at" TIMESTAMP WITH TIME ZONE NOT NULL, "state" text NOT NULL, "decided_by_id" uuid, "decided_at" TIMESTAMP WITH TIME ZONE, "decided_because" text, "edition_id" bigint,
   CONSTRAINT "proposal_kind_known" CHECK (kind IN ${kinds}),
   CONSTRAINT "proposal_state_known" CHECK (state IN ('proposed', 'accepted', 'declined', 'replaced')),
   CONSTRAINT "proposal_by_two" CHECK (state <> 'accepted' OR decided_by_id IS NOT NULL AND decided_by_id IS DISTINCT FROM proposed_by_id),
   CONSTRAINT "proposal_pkey" PRIMARY KEY ("id"))`,
  `ALTER TABLE "proposal" ADD CONSTRAINT "proposal_edition_fkey" FOREIGN KEY ("edition_id") REFERENCES "edition"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
  `CREATE UNIQUE INDEX "proposal_open_unique" ON "proposal" ("kind", "subject", "field") WHERE state = 'proposed'`,
  `CREATE INDEX "proposal_subject_index" ON "proposal" ("subject", "kind")`,
  // What was decided stays as it was decided; who and what was proposed is never written over.
  `CREATE FUNCTION proposal_stays() RETURNS trigger LANGUAGE plpgsql AS $$
    BEGIN
      IF TG_OP = 'DELETE' OR OLD.state <> 'proposed'
        OR (NEW.kind, NEW.subject, NEW.field, NEW.was, NEW.wanted, NEW.proposed_by_id, NEW.proposed_at) IS DISTINCT FROM (OLD.kind, OLD.subject, OLD.field, OLD.was, OLD.wanted, OLD.proposed_by_id, OLD.proposed_at)
      THEN RAISE EXCEPTION 'a proposal stays as it was made and decided' USING ERRCODE = 'restrict_violation', CONSTRAINT = 'proposal_stays'; END IF;
      RETURN NEW;
    END $$`,
  `CREATE TRIGGER proposal_stays BEFORE UPDATE OR DELETE ON proposal FOR EACH ROW EXECUTE FUNCTION proposal_stays()`,
];
