import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { askedFields, keepUntil, reportLines, rulesOfRecord } from '#records';
import type { Examination, ExaminationRule, ItemKind } from '#tour-file';
import { connectionOf, pageSize } from '../../../platform/graphql/paging.js';
import type { ExaminationRecord, ExaminationRecordConnection } from './record.types.js';

import { recordNumber } from './record-number.js';
import { rulesInForce } from './rules-in-force.reader.js';

// The report that came next: the first day of a record that counts and is later than this one's.
const records = `SELECT record.id, record.data, record.recorded_by, record.recorded_at, record.reason, record.supersedes, later.id AS superseded_by, item.kind,
  file.id AS file_id, file.name AS file_name, file.type AS file_type, octet_length(file.bytes) AS file_size, file.sha256,
  (SELECT min(next.data->>'on') FROM examination next WHERE next.item_id = record.item_id AND next.data->>'on' > record.data->>'on'
    AND NOT EXISTS (SELECT FROM examination corrected WHERE corrected.supersedes = next.id)) AS next_on
FROM examination record JOIN item ON item.id = record.item_id LEFT JOIN examination later ON later.supersedes = record.id
LEFT JOIN report_file file ON file.id = (record.data->>'reportFile')::uuid
WHERE record.item_id = $1 AND ($2::bigint IS NULL OR record.id < $2) ORDER BY record.id DESC LIMIT $3`;

interface RecordOnFile {
  readonly id: string;
  readonly data: Examination;
  readonly recorded_by: string;
  readonly recorded_at: Date;
  readonly reason: string | null;
  readonly supersedes: string | null;
  readonly superseded_by: string | null;
  readonly kind: ItemKind;
  readonly file_id: string | null;
  readonly file_name: string;
  readonly file_type: string;
  readonly file_size: number;
  readonly sha256: string;
  readonly next_on: string | null;
}

/** Records of an item with everything that is on file of each, newest first. */
@Injectable()
export class RecordPageQuery {
  constructor(private readonly dataSource: DataSource) {}

  async records(itemId: string, first?: number | null, after?: string | null): Promise<ExaminationRecordConnection> {
    const size = pageSize(first);
    const rows: RecordOnFile[] = await this.dataSource.query(records, [itemId, recordNumber(after), size + 1]);
    const rules = rows.length === 0 ? [] : await rulesInForce(this.dataSource.manager);
    return connectionOf(
      rows,
      size,
      (row) => row.id,
      (row) => recordOf(row, rules),
    );
  }
}

function recordOf(row: RecordOnFile, rules: readonly ExaminationRule[]): ExaminationRecord {
  const under = rulesOfRecord(rules, row.kind, row.data);
  return {
    id: row.id,
    examination: row.data,
    recordedBy: row.recorded_by,
    recordedAt: row.recorded_at.toISOString(),
    supersededBy: row.superseded_by,
    supersedes: row.supersedes,
    reason: row.reason,
    file:
      row.file_id === null
        ? null
        : { id: row.file_id, name: row.file_name, type: row.file_type, sizeBytes: row.file_size, sha256: row.sha256 },
    kept: keepUntil(row.data, under, row.next_on),
    lines: reportLines(row.data, askedFields(under)),
  };
}
