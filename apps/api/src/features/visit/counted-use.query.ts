import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { CountedUse } from './visit.types.js';

// A hang that was inspected after assembly has been lifted once, with every serial in it. A batch is in no hang by piece, and is not counted.
const counted = `WITH flown AS MATERIALIZED (SELECT DISTINCT signed.plan_id, signed.hang, signed.signed_at::date AS on_day, serial.id FROM sign_off signed
  JOIN plan_part part ON part.plan_id = signed.plan_id AND part.part = 'hang' AND part.key = signed.hang
  CROSS JOIN LATERAL (SELECT part.data->>'gridSerial' AS id UNION SELECT pick->>'hoistSerial' FROM jsonb_array_elements(part.data->'picks') pick
    UNION SELECT box->>'serial' FROM jsonb_array_elements(part.data->'boxes') box) serial
  WHERE signed.kind = 'inspected' AND serial.id IS NOT NULL),
rules AS (SELECT rule.data->>'jurisdiction' AS jurisdiction, rule.data->'kinds' AS kinds, rule.data->>'basis' AS basis, (rule.data->>'every')::int AS every, rule.data->>'check' AS check
  FROM rule WHERE kind = 'examination' AND is_accepted AND rule.data->>'basis' IN ('lifts', 'hours')),
asked AS (SELECT item.id, item.kind, item.model, item.depot, rules.jurisdiction, rules.basis, rules.every,
    (SELECT max(data->>'on') FROM examination WHERE item_id = item.id AND data->>'outcome' = 'pass' AND data->>'check' IS NOT DISTINCT FROM rules.check
      AND NOT EXISTS (SELECT FROM examination later WHERE later.supersedes = examination.id)) AS since
  FROM item JOIN rules ON rules.kinds ? item.kind WHERE item.state IN ('in service', 'quarantined') AND item.count IS NULL AND ($1::text IS NULL OR item.depot = $1)
    AND (rules.basis = 'hours' OR item.id IN (SELECT id FROM flown)))
SELECT id AS "itemId", kind, model, depot, jurisdiction, basis, every, since, CASE WHEN basis = 'lifts' THEN lifts END AS count, basis = 'lifts' AND lifts >= every AS "isDue"
FROM asked CROSS JOIN LATERAL (SELECT count(*)::int AS lifts FROM flown WHERE flown.id = asked.id AND (since IS NULL OR flown.on_day > since::date)) used
ORDER BY basis = 'lifts' AND lifts >= every DESC, lifts::float / every DESC, id LIMIT 200`;

/** What rules count by lifts or hours: lifts as they were signed off here since the last passed record; hours nobody tells. */
@Injectable()
export class CountedUseQuery {
  constructor(private readonly dataSource: DataSource) {}

  of(depot: string | null): Promise<CountedUse[]> {
    return this.dataSource.query(counted, [depot]);
  }
}
