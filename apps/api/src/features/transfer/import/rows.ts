import { Check, Column, Entity, PrimaryColumn } from 'typeorm';
import type { ImportStep } from '../import-watch.js';

/** A file with many rows that comes in beside the requests: who sent it, and how far it is. */
@Entity('csv_import')
@Check('csv_import_step_known', `step IN ('waiting', 'reading', 'checking', 'writing', 'dates')`)
export class CsvImportRow {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'csv_import_pkey' })
  id: string;

  /** Counts up: the newest is the one with the highest. */
  @Column('bigint', { generated: 'increment' })
  number: string;

  /** The route of its rows: "items/box", "models/boxes", "examinations". */
  @Column('text')
  of: string;

  @Column('boolean', { name: 'dry_run' })
  dryRun: boolean;

  @Column('uuid', { name: 'asked_by_id' })
  askedById: string;

  @Column('timestamptz', { name: 'asked_at' })
  askedAt: Date;

  @Column('text')
  step: ImportStep;

  @Column('int', { name: 'rows_total' })
  rowsTotal: number;

  @Column('int', { name: 'rows_checked' })
  rowsChecked: number;

  @Column('int', { name: 'rows_written' })
  rowsWritten: number;

  @Column('int', { name: 'rows_dated' })
  rowsDated: number;

  /** Until when the process that has the file is taken to be alive, on the database's clock. */
  @Column('timestamptz', { name: 'alive_until' })
  aliveUntil: Date;
}

export type ImportEnd = 'done' | 'refused' | 'failed' | 'cancelled';

/** How an import ended: written once, by whoever is first; where its rows are saved, with them. */
@Entity('csv_import_end')
@Check('csv_import_end_state_known', `state IN ('done', 'refused', 'failed', 'cancelled')`)
export class CsvImportEndRow {
  @PrimaryColumn('uuid', { name: 'import_id', primaryKeyConstraintName: 'csv_import_end_pkey' })
  importId: string;

  @Column('text')
  state: ImportEnd;

  /** Why it failed: house-stopped, fault. */
  @Column('text', { nullable: true })
  code: string | null;

  @Column('jsonb', { nullable: true })
  answer: object | null;

  @Column('timestamptz', { name: 'ended_at', default: () => 'clock_timestamp()' })
  endedAt: Date;
}
