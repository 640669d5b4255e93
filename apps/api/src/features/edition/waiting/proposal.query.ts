import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { shownValue } from '#editions';
import { type Words, tell } from '#words';
import { WORDS } from '../../../platform/config/words.js';
import { BadInputError } from '../../../platform/faults/fault.js';
import { connectionOf, pageSize, readCursor } from '../../../platform/graphql/paging.js';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { judgesAlone } from '../../one-person/one-person.reader.js';
import { waitingFact } from '../edition.writer.js';
import type { ProposalConnection, ProposalView, ProposedFigure } from './proposal.types.js';
import type { ProposalRow } from '../rows.js';

const columns = `proposal.id, kind, subject, field, was, wanted, reason, proposed_by_id AS "proposedById", proposed_at AS "proposedAt", coalesce(account.name, 'Cartwright') AS "proposedBy"`;

const open = `SELECT ${columns} FROM proposal LEFT JOIN account ON account.id = proposed_by_id
WHERE state = 'proposed' AND ($1::bigint IS NULL OR proposal.id > $1) ORDER BY proposal.id LIMIT $2`;

const ofItem = `SELECT ${columns} FROM proposal LEFT JOIN account ON account.id = proposed_by_id
WHERE state = 'proposed' AND kind IN ('item', 'record') AND subject = $1 ORDER BY proposal.id LIMIT 100`;

const ofCatalogue = `SELECT ${columns} FROM proposal LEFT JOIN account ON account.id = proposed_by_id
WHERE state = 'proposed' AND kind NOT IN ('item', 'record') ORDER BY proposal.id LIMIT 500`;

const counted = `SELECT count(*)::int AS count, max(id)::text AS newest, coalesce(bool_or(proposed_by_id = $1), false) AS own FROM proposal WHERE state = 'proposed'`;

type OpenRow = Pick<ProposalRow, 'id' | 'kind' | 'subject' | 'field' | 'was' | 'wanted' | 'reason' | 'proposedAt' | 'proposedById'> & {
  readonly proposedBy: string;
};

/** What waits for the safety officer, oldest first, a page at a time; and what waits of one thing. */
@Injectable()
export class ProposalQuery {
  constructor(
    private readonly dataSource: DataSource,
    @Inject(WORDS) private readonly words: Words,
  ) {}

  async proposals(me: SignedIn, first?: number | null, after?: string | null): Promise<ProposalConnection> {
    const size = pageSize(first);
    const seen = readCursor(after) ?? null;
    if (seen !== null && !/^\d{1,18}$/.test(seen))
      throw new BadInputError([{ field: 'after', value: String(after).slice(0, 80), wanted: 'a cursor of an earlier page' }]);
    const rows: OpenRow[] = await this.dataSource.query(open, [seen, size + 1]);
    const [all]: { count: number; newest: string | null; own: boolean }[] = await this.dataSource.query(counted, [me.id]);
    const proposer = await this.proposer(me);
    return {
      ...connectionOf(
        rows,
        size,
        (row) => row.id,
        (row) => this.view(row, proposer),
      ),
      totalCount: all?.count ?? 0,
      newest: all?.newest ?? null,
      holdsOwn: proposer !== null && (all?.own ?? false),
    };
  }

  async ofItem(me: SignedIn, id: string): Promise<ProposalView[]> {
    const rows: OpenRow[] = await this.dataSource.query(ofItem, [id]);
    const proposer = await this.proposer(me);
    return rows.map((row) => this.view(row, proposer));
  }

  async ofCatalogue(me: SignedIn): Promise<ProposalView[]> {
    const rows: OpenRow[] = await this.dataSource.query(ofCatalogue);
    const proposer = await this.proposer(me);
    return rows.map((row) => this.view(row, proposer));
  }

  /** Whose proposals another one accepts: the id of who asks; null where one person judges alone. */
  private async proposer(me: SignedIn): Promise<string | null> {
    return (await judgesAlone(this.dataSource.manager, me)) ? null : me.id;
  }

  private view(row: OpenRow, proposer: string | null): ProposalView {
    const { id, kind, subject, reason, proposedAt, proposedBy } = row;
    return {
      ...{ id, kind, reason, proposedBy, proposedAt: proposedAt.toISOString() },
      subject: kind === 'model' ? subject.slice(subject.indexOf('/') + 1) : subject,
      itemId: kind === 'item' || kind === 'record' ? subject : null,
      sentence: tell(this.words.waiting, waitingFact({ ...row, was: row.was ?? undefined, wanted: row.wanted ?? undefined })),
      figures: this.figures(row),
      isOwn: proposer !== null && row.proposedById === proposer,
    };
  }

  /** One field with both values; of a thing as a whole every field that differs. */
  private figures({ field, kind, was, wanted }: OpenRow): ProposedFigure[] {
    const figure = (name: string, before: unknown, after: unknown) => ({
      ...{ name: this.words.guarded(name), was: shownValue(before), wanted: shownValue(after) },
    });
    if (kind !== 'record' && field !== '') return [figure(field, was, wanted)];
    const [before, after] = [(was ?? {}) as Record<string, unknown>, (wanted ?? {}) as Record<string, unknown>];
    return [...new Set([...Object.keys(before), ...Object.keys(after)])]
      .map((key) => figure(key, before[key], after[key]))
      .filter((each) => each.was !== each.wanted);
  }
}
