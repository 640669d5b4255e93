import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { type Author, authorId } from '../../platform/sign-in/person.js';
import { type Guarded, insertEditions } from './edition.writer.js';
import { ProposalRow } from './rows.js';

/** Proposals as they are decided. */
@Injectable()
export class ProposalWriter {
  /** What waits of a thing as a whole. */
  openOf(manager: EntityManager, { kind, subject }: Guarded): Promise<ProposalRow | null> {
    return manager.getRepository(ProposalRow).findOneBy({ kind, subject, field: '', state: 'proposed' });
  }

  /** Accepted, each thing with its edition; a record is its own. */
  async closeAccepted(manager: EntityManager, rows: readonly ProposalRow[], who: Author, at: Date, because: string): Promise<void> {
    const things = new Map<string, ProposalRow[]>();
    for (const row of rows.filter((each) => each.kind !== 'record'))
      things.set(`${row.kind} ${row.subject}`, [...(things.get(`${row.kind} ${row.subject}`) ?? []), row]);
    const grouped = [...things.values()];
    const ids = await insertEditions(
      manager,
      who,
      at,
      because,
      grouped.flatMap((group) => group.slice(0, 1).map(({ kind, subject }) => ({ kind, subject, changes: group.map(changeOf) }))),
    );
    const editions = new Map(grouped.flatMap((group, index) => group.map((row) => [row.id, ids[index] ?? null] as const)));
    await this.close(manager, rows, 'accepted', who, at, because, editions);
  }

  async close(
    manager: EntityManager,
    rows: readonly ProposalRow[],
    state: 'accepted' | 'declined',
    who: Author,
    at: Date,
    because: string,
    editions: ReadonlyMap<string, string | null> = new Map(),
  ): Promise<void> {
    await manager.query(
      `UPDATE proposal SET state = $3, decided_by_id = $4, decided_at = $5, decided_because = $6, edition_id = given.edition,
         by_one_person = ($3 = 'accepted' AND proposed_by_id IS NOT DISTINCT FROM $4)
       FROM unnest($1::bigint[], $2::bigint[]) AS given (id, edition) WHERE proposal.id = given.id`,
      [rows.map((each) => each.id), rows.map((each) => editions.get(each.id) ?? null), state, authorId(who), at, because],
    );
  }
}

const changeOf = ({ field, was, wanted }: ProposalRow) => ({ field, was: was ?? undefined, wanted: wanted ?? undefined });
