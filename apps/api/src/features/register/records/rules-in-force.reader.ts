import type { EntityManager } from 'typeorm';
import type { ExaminationRule } from '#tour-file';

/** Examination rules that hold, in the order in which they came on file; those that wait for the safety officer ask nothing yet. */
export async function rulesInForce(manager: EntityManager): Promise<readonly ExaminationRule[]> {
  const rows: { data: ExaminationRule }[] = await manager.query(
    `SELECT data FROM rule WHERE kind = 'examination' AND is_accepted ORDER BY place`,
  );
  return rows.map((row) => row.data);
}
