import type { EntityManager } from 'typeorm';
import type { Improvement } from '#pack-plan';
import type { ImprovementFact } from '#trade';
import type { JobState } from '../../../planning/jobs/rows.js';
import type { ImproveSubject } from '../stored/plan.writer.js';

/** Beside its plan, in the place of what was found before; nothing where the plan is no longer on file. */
export async function putImprovement(manager: EntityManager, planId: string, { fact, better }: Improvement, at: Date): Promise<void> {
  await manager.query(
    `INSERT INTO plan_improvement (plan_id, fact, better, found_at) SELECT id, $2::jsonb, $3::jsonb, $4 FROM pack_plan WHERE id = $1
     ON CONFLICT (plan_id) DO UPDATE SET fact = excluded.fact, better = excluded.better, found_at = excluded.found_at`,
    [planId, JSON.stringify(fact), better && JSON.stringify(better), at],
  );
}

/** What is to be said of a plan: found, still looked for, or broken off; null where its list was proved when it was made. */
export async function improvementFact(manager: EntityManager, planId: string): Promise<ImprovementFact | null> {
  const [row] = await manager.query<{ fact: ImprovementFact | null; state: JobState | null; subject: ImproveSubject | null }[]>(
    `SELECT found.fact, job.state, job.subject FROM pack_plan plan LEFT JOIN plan_improvement found ON found.plan_id = plan.id
     LEFT JOIN LATERAL (SELECT state, subject FROM job WHERE kind = 'improve' AND job.tour_id = plan.tour_id AND job.show_id = plan.show_id
       AND subject ->> 'planId' = plan.id::text ORDER BY number DESC LIMIT 1) job ON true WHERE plan.id = $1`,
    [planId],
  );
  if (!row || row.fact || !row.subject) return row?.fact ?? null;
  const { moves, atLeast } = row.subject;
  return { code: row.state === 'waiting' || row.state === 'running' ? 'going-on' : 'broken-off', moves, atLeast };
}
