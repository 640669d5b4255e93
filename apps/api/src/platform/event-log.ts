import { Column, Entity, Index, PrimaryGeneratedColumn, type EntityManager } from 'typeorm';
import { type Author, authorId } from './sign-in/person.js';

/** Who did what, when: append only (a trigger refuses change and removal). */
@Entity('event')
@Index('event_item_index', ['itemId', 'id'])
@Index('event_tour_index', ['tourId', 'id'])
export class EventRow {
  @PrimaryGeneratedColumn('identity', { type: 'bigint', generatedIdentity: 'ALWAYS', primaryKeyConstraintName: 'event_pkey' })
  id: string;

  @Column('timestamptz')
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
}

export interface NewEvent {
  readonly what: string;
  readonly sentence: string;
  readonly itemId?: string;
  readonly tourId?: string;
  /** Where the item is from now on, where that changed. */
  readonly place?: string;
  /** Where it came from. */
  readonly fromPlace?: string;
}

export async function recordEvents(manager: EntityManager, who: Author, at: Date, events: readonly NewEvent[]): Promise<void> {
  if (events.length === 0) return;
  await manager.query(
    `INSERT INTO event (at, who, person_id, what, sentence, item_id, tour_id, place, from_place)
     SELECT $1, $2, $3, what, sentence, item_id, tour_id, place, from_place FROM unnest($4::text[], $5::text[], $6::text[], $7::text[], $8::text[], $9::text[])
       WITH ORDINALITY AS given (what, sentence, item_id, tour_id, place, from_place, number) ORDER BY number`,
    [
      at,
      who.name,
      authorId(who),
      ...(['what', 'sentence', 'itemId', 'tourId', 'place', 'fromPlace'] as const).map((field) =>
        events.map((each) => each[field] ?? null),
      ),
    ],
  );
}
