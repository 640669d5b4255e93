import type { MigrationInterface, QueryRunner } from 'typeorm';

/** A person who leaves goes out of the answers for places, and out of the name under a signature of the house, too. */
export class ReplaceNamesOfAnswers20261127083000 implements MigrationInterface {
  name = 'ReplaceNamesOfAnswers20261127083000';

  async up(runner: QueryRunner): Promise<void> {
    await replaceInPersonLeaves(runner, replaced);
  }

  async down(runner: QueryRunner): Promise<void> {
    await replaceInPersonLeaves(
      runner,
      replaced.map(([from, to]) => [to, from]),
    );
  }
}

const columns = `('officer_proposal', 'decided_by', 'decided_by_id')`;
const approved = `UPDATE model SET data = jsonb_set(data, '{approved,by}', to_jsonb(label)) WHERE data -> 'approved' ->> 'by' = word;`;

const replaced: readonly (readonly [string, string])[] = [
  [columns, `${columns}, ('place_answer', 'decided_by', 'decided_by_id')`],
  [
    approved,
    // Who comes from outside keeps the name, also where somebody of the house bore the same.
    `ALTER TABLE sign_off DISABLE TRIGGER USER;
        UPDATE sign_off SET name = label WHERE name = word AND company IS NULL;
        ALTER TABLE sign_off ENABLE TRIGGER USER;
        ${approved}`,
  ],
];

async function replaceInPersonLeaves(runner: QueryRunner, all: readonly (readonly [string, string])[]): Promise<void> {
  let [{ body }] = (await runner.query(`SELECT pg_get_functiondef('person_leaves(uuid)'::regprocedure) AS body`)) as [{ body: string }];
  for (const [from, to] of all) {
    if (!body.includes(from)) throw new Error(`person_leaves does not hold ${from}`);
    body = body.replace(from, () => to);
  }
  await runner.query(body);
}
