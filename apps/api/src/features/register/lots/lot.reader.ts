import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { LotSplit } from './lot.types.js';

const family = `SELECT parent_id AS "parentId", child_id AS "childId", pieces, of_pieces AS "ofPieces", state, reason,
  coalesce(account.name, 'Cartwright') AS "madeBy", made_at AS "madeAt"
FROM lot_split LEFT JOIN account ON account.id = made_by_id WHERE $1::text IS NULL OR parent_id = $1 OR child_id = $1 ORDER BY lot_split.id LIMIT $2`;

/** Batches and the parts that were taken out of them. */
@Injectable()
export class LotReader {
  constructor(private readonly dataSource: DataSource) {}

  /** Where a batch came from and what was taken out of it, oldest first; of all batches where none is named. */
  async splits(itemId: string | null): Promise<LotSplit[]> {
    const rows: (Omit<LotSplit, 'madeAt'> & { madeAt: Date })[] = await this.dataSource.query(family, [
      itemId,
      itemId === null ? 100_000 : 500,
    ]);
    return rows.map((row) => ({ ...row, madeAt: row.madeAt.toISOString() }));
  }
}
