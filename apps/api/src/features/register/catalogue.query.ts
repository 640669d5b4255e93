import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { CatalogueModel } from './register.types.js';
import type { RuleRow } from './rows.js';

const models = `SELECT model.kind, model.model, model.data, coalesce(held.items, 0)::int AS "itemCount"
FROM model LEFT JOIN (SELECT model, count(*) AS items FROM item GROUP BY model) held ON held.model = model.model
WHERE $1::text IS NULL OR model.kind = $1 ORDER BY model.kind, model.place`;

const rules = `SELECT data FROM rule WHERE kind = $1 ORDER BY place`;

/** The catalogue and the rules of the house. */
@Injectable()
export class CatalogueQuery {
  constructor(private readonly dataSource: DataSource) {}

  models(kind?: string | null): Promise<CatalogueModel[]> {
    return this.dataSource.query(models, [kind || null]);
  }

  async rules(kind: RuleRow['kind']): Promise<object[]> {
    const rows: { data: object }[] = await this.dataSource.query(rules, [kind]);
    return rows.map((row) => row.data);
  }
}
