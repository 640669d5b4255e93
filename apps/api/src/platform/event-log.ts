import { Column, Entity, Index, PrimaryGeneratedColumn, type EntityManager } from 'typeorm';
import { currentAct } from './acts/current-act.js';
import { noteSaid } from './acts/said.js';
import { currentRequest } from './request-once/current-request.js';
import { type Author, authorId } from './sign-in/person.js';

/** Who did what, when: append only (a trigger refuses change and removal). */
@Entity('event')
@Index('event_item_index', ['itemId', 'id'])
@Index('event_tour_index', ['tourId', 'id'])
@Index('event_person_index', ['personId', 'id'])
@Index('event_row_index', ['rowTable', 'rowKey'])
@Index('event_act_index', ['act', 'itemId'])
@Index('event_told_index', ['act', 'id'], { where: "what <> 'row'" })
@Index('event_said_index', ['id', 'act'], { where: "what <> 'row'" })
export class EventRow {
  @PrimaryGeneratedColumn('identity', { type: 'bigint', generatedIdentity: 'ALWAYS', primaryKeyConstraintName: 'event_pkey' })
  id: string;

  @Column('timestamptz')
  @Index('event_at_index')
  at: Date;

  @Column('text')
  who: string;

  @Column('uuid', { name: 'person_id', nullable: true })
  personId: string | null;

  @Column('text')
  what: string;

  @Column('text')
  sentence: string;

  @Column('text', { name: 'item_id', nullable: true })
  itemId: string | null;

  @Column('text', { name: 'tour_id', nullable: true })
  tourId: string | null;

  @Column('text', { nullable: true })
  place: string | null;

  @Column('text', { name: 'from_place', nullable: true })
  fromPlace: string | null;

  /** Lines of one transaction belong to one act: what was said of it, and the rows that it changed. */
  @Column('uuid', { default: () => 'act_id()' })
  act: string;

  /** So that nobody finds words by trying which give their hash. */
  @Column('uuid', { default: () => 'new_salt()' })
  salt: string;

  /** The operation or address by which it was done. */
  @Column('text', { nullable: true })
  via: string | null;

  /** When it was done by the clock of the device, where that said so. */
  @Column('timestamptz', { name: 'done_at', nullable: true })
  doneAt: Date | null;

  @Column('text', { name: 'show_id', nullable: true })
  showId: string | null;

  /** Of a line that a table wrote itself (`what` is `row`, or `outside` where no Cartwright wrote it): which row, what it was and is. */
  @Column('text', { name: 'row_table', nullable: true })
  rowTable: string | null;

  @Column('text', { name: 'row_key', nullable: true })
  rowKey: string | null;

  @Column('jsonb', { nullable: true })
  before: object | null;

  @Column('jsonb', { nullable: true })
  after: object | null;
}

export interface NewEvent {
  readonly what: string;
  readonly sentence: string;
  readonly itemId?: string;
  readonly tourId?: string;
  readonly showId?: string;
  /** Where the item is from now on, where that changed. */
  readonly place?: string;
  /** Where it came from. */
  readonly fromPlace?: string;
}

/** Says what an act was, inside its transaction; the rows that it changes are written beside it by their tables. */
export async function recordEvents(manager: EntityManager, who: Author, at: Date, events: readonly NewEvent[]): Promise<void> {
  if (events.length === 0) return;
  noteSaid(manager);
  await manager.query(
    `INSERT INTO event (at, who, person_id, via, done_at, what, sentence, item_id, tour_id, show_id, place, from_place)
     SELECT $1, $2, $3, $4, $5, what, sentence, item_id, tour_id, show_id, place, from_place
     FROM unnest($6::text[], $7::text[], $8::text[], $9::text[], $10::text[], $11::text[], $12::text[])
       WITH ORDINALITY AS given (what, sentence, item_id, tour_id, show_id, place, from_place, number) ORDER BY number`,
    [
      at,
      who.name,
      authorId(who),
      currentAct()?.via ?? null,
      currentRequest()?.doneAt ?? null,
      ...(['what', 'sentence', 'itemId', 'tourId', 'showId', 'place', 'fromPlace'] as const).map((field) =>
        events.map((each) => each[field] ?? null),
      ),
    ],
  );
}
