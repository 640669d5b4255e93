import { randomUUID } from 'node:crypto';
import { Inject, Injectable, Logger, type OnApplicationBootstrap, type OnApplicationShutdown } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { ok } from '#kernel';
import { CLOCK, type Clock, today } from '../../../platform/config/config.js';
import { insideAct } from '../../../platform/acts/current-act.js';
import { UnitOfWork } from '../../../platform/database/unit-of-work.js';
import { recordEvents } from '../../../platform/event-log.js';
import { databaseErrorOf, isConnectionLost } from '../../../platform/faults/database-error.js';
import { BadInputError, NotAllowedError } from '../../../platform/faults/fault.js';
import { outsideRequest } from '../../../platform/request-once/current-request.js';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { judgesAlone } from '../../one-person/one-person.reader.js';
import { ItemDates } from '../../register/item-dates.writer.js';
import type { ProposalAnswering } from './proposal.types.js';
import { ProposalService, notOwn, reasonFrom } from './proposal.service.js';

/** Things whose proposals are answered in one transaction. */
const thingsAtOnce = 250;

/** For how long its process is taken to be alive after each word, and how often others look whether it is. */
const aliveSeconds = 10;
const lookEveryMs = 3_000;

/** How often a portion is tried that others keep getting in the way of, a dozen tries each time. */
const mostRounds = 20;

/** What stays is told by the first of its reasons. */
const mostTold = 20;

const view = `SELECT answering.id, is_accepted AS accept, answering.reason, coalesce(account.name, 'Cartwright') AS "askedBy", is_going AS "isGoing", total,
  coalesce(sum(part.answered), 0)::int AS answered, coalesce(sum(cardinality(part.ids)) FILTER (WHERE part.answered IS NOT NULL), 0)::int AS looked,
  coalesce((SELECT array_agg(why) FROM (SELECT unnest(left_because) AS why FROM answering_part WHERE answering_id = answering.id LIMIT ${mostTold}) few), '{}') AS "leftBecause",
  extract(epoch FROM coalesce(ended_at, clock_timestamp()) - asked_at)::int AS seconds
FROM answering LEFT JOIN account ON account.id = asked_by_id LEFT JOIN answering_part part ON answering_id = answering.id`;

/** Portions in order: first what is no item, together, since items are judged by it; then items, each with all that waits of it. */
const portions = `INSERT INTO answering_part (answering_id, number, ids)
SELECT $1, row_number() OVER (ORDER BY portion), ids FROM (
  SELECT portion, array_agg(id ORDER BY id) AS ids FROM (
    SELECT id, CASE WHEN kind IN ('item', 'record') THEN 1 + (dense_rank() OVER (PARTITION BY kind IN ('item', 'record') ORDER BY subject)) / ${thingsAtOnce} ELSE 0 END AS portion
    FROM proposal WHERE state = 'proposed' AND id <= $2) placed GROUP BY portion) grouped`;

interface Part {
  readonly number: number;
  readonly ids: string[];
  /** Decided by its items and their records alone. */
  readonly isAlone: boolean;
}

/**
 * An answer to more than one transaction takes, however much waits: one signed act, carried out in portions beside the requests, each a unit of work of its own,
 * so that whoever writes meanwhile waits for a portion at most. What is answered was chosen when it was signed. Its row says how far it is; the work of a process
 * that died is taken up by the next.
 */
@Injectable()
export class Answerings implements OnApplicationBootstrap, OnApplicationShutdown {
  private readonly logger = new Logger('answerings');
  private readonly going = new Map<string, Promise<void>>();
  private timer: NodeJS.Timeout | undefined;
  private isStopping = false;

  constructor(
    private readonly dataSource: DataSource,
    private readonly unitOfWork: UnitOfWork,
    private readonly proposals: ProposalService,
    private readonly dates: ItemDates,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  onApplicationBootstrap(): void {
    this.timer = setInterval(() => void this.takeUp().catch(() => undefined), lookEveryMs);
    this.timer.unref();
  }

  /** The portion under way is finished; another process goes on from there at once. */
  async onApplicationShutdown(): Promise<void> {
    this.isStopping = true;
    clearInterval(this.timer);
    const ids = [...this.going.keys()];
    await Promise.all(this.going.values());
    await this.dataSource
      .query('UPDATE answering SET alive_until = clock_timestamp() WHERE id = ANY($1) AND is_going', [ids])
      .catch(() => undefined);
  }

  /** Signs an answer to everything that waits, up to the newest that was seen; it is carried out from here on. */
  async start(through: string, isAccepted: boolean, reason: string, me: SignedIn): Promise<ProposalAnswering> {
    const because = reasonFrom(reason);
    if (!/^\d{1,18}$/.test(through))
      throw new BadInputError([{ field: 'through', value: through.slice(0, 80), wanted: 'the id of the newest proposal that was seen' }]);
    const id = randomUUID();
    const outcome = await this.unitOfWork.run<string>(async (manager) =>
      ok(await this.sign(manager, id, through, isAccepted, because, me)),
    );
    if (!outcome.ok) throw new Error('nobody refuses this');
    if (outcome.value === id) this.carryOn(id);
    const [row] = await this.rows('WHERE answering.id = $1', [outcome.value]);
    if (!row) throw new Error('what was signed is on file');
    return row;
  }

  /** The newest that was signed. */
  async latest(): Promise<ProposalAnswering | null> {
    const [row] = await this.rows('WHERE answering.number = (SELECT max(number) FROM answering)', []);
    return row ?? null;
  }

  private rows(where: string, values: readonly unknown[]): Promise<ProposalAnswering[]> {
    return this.dataSource.query(`${view} ${where} GROUP BY answering.id, account.id`, [...values]);
  }

  private async sign(
    manager: EntityManager,
    id: string,
    through: string,
    isAccepted: boolean,
    because: string,
    me: SignedIn,
  ): Promise<string> {
    await manager.query(`SELECT set_config('cartwright.act', $1, true)`, [id]);
    const [{ total, own, under }]: [{ total: number; own: boolean; under: boolean }] = await manager.query(
      `SELECT count(*)::int AS total, coalesce(bool_or(proposed_by_id = $2), false) AS own, EXISTS (SELECT FROM answering WHERE is_going) AS under
       FROM proposal WHERE state = 'proposed' AND id <= $1`,
      [through, me.id],
    );
    if (under)
      throw new BadInputError([
        { field: 'through', value: through, wanted: 'one answer after the other: the one before is still under way' },
      ]);
    if (total === 0) throw new BadInputError([{ field: 'through', value: through, wanted: 'something that waits: look again' }]);
    if (isAccepted && own && !(await judgesAlone(manager, me))) throw new NotAllowedError(notOwn);
    await manager.query(
      `INSERT INTO answering (id, is_accepted, reason, asked_by_id, deputy_of_id, asked_at, total, is_going, alive_until)
       VALUES ($1, $2, $3, $4, $5, clock_timestamp(), $6, true, clock_timestamp() + $7 * interval '1 second')`,
      [id, isAccepted, because, me.id, me.deputyOf ?? null, total, aliveSeconds],
    );
    await manager.query(portions, [id, through]);
    const [what, verb] = isAccepted ? ['accepted', 'Accepts'] : ['declined', 'Declines'];
    const sentence = `${verb} all ${total} that wait, up to number ${through}, in portions: ${because}.`;
    await recordEvents(manager, me, this.clock.now(), [{ what, sentence }]);
    return id;
  }

  /** What a process that died left behind. */
  private async takeUp(): Promise<void> {
    const [taken]: [{ id: string }[], number] = await this.dataSource.query(
      `UPDATE answering SET alive_until = clock_timestamp() + $1 * interval '1 second' WHERE is_going AND alive_until < clock_timestamp() RETURNING id`,
      [aliveSeconds],
    );
    for (const { id } of taken) this.carryOn(id);
  }

  private carryOn(id: string): void {
    if (this.going.has(id) || this.isStopping) return;
    const finished = outsideRequest(() => this.all(id))
      // A database that is away: once it is back, whoever looks next goes on.
      .catch((fault: Error) => this.logger.warn({ answering: id, err: fault }))
      .finally(() => this.going.delete(id));
    this.going.set(id, finished);
  }

  private async all(id: string): Promise<void> {
    const me = await this.signer(id);
    const work = async () => {
      while (!this.isStopping && (await this.portion(id, me)));
    };
    await insideAct({ who: me, via: 'answerAllProposals' }, work);
  }

  /** One portion, or the end; false: nothing is left to do here. */
  private async portion(id: string, me: SignedIn): Promise<boolean> {
    for (let round = 1; ; round++) {
      try {
        const part = await this.part(id);
        const work = async (manager: EntityManager) => ok(await this.next(manager, id, part, me));
        const outcome = await this.unitOfWork.run<boolean>(work, part?.isAlone ? 'READ COMMITTED' : 'SERIALIZABLE');
        await this.dates.workOut(today(this.clock));
        return outcome.ok && outcome.value;
      } catch (fault) {
        if (isConnectionLost(fault)) throw fault;
        const isOvertaken = ['40001', '40P01'].includes(databaseErrorOf(fault)?.code ?? '');
        if (isOvertaken && round < mostRounds) continue;
        await this.leave(id, fault);
      }
    }
  }

  private async part(id: string): Promise<Part | undefined> {
    const [part]: Part[] = await this.dataSource.query(
      `SELECT number, ids, NOT EXISTS (SELECT FROM proposal WHERE id = ANY(ids) AND (kind NOT IN ('item', 'record') OR kind = 'item' AND field <> '')) AS "isAlone"
       FROM answering_part WHERE answering_id = $1 AND answered IS NULL ORDER BY number LIMIT 1`,
      [id],
    );
    return part;
  }

  private async next(manager: EntityManager, id: string, part: Part | undefined, me: SignedIn): Promise<boolean> {
    await manager.query(`SELECT set_config('cartwright.act', $1, true)`, [id]);
    const [answering]: { accept: boolean; reason: string }[] = await manager.query(
      `SELECT is_accepted AS accept, reason FROM answering WHERE id = $1 AND is_going FOR UPDATE`,
      [id],
    );
    if (!answering) return false;
    const [first]: { number: number | null }[] = await manager.query(
      'SELECT min(number) AS number FROM answering_part WHERE answering_id = $1 AND answered IS NULL',
      [id],
    );
    // Another process was quicker.
    if ((first?.number ?? undefined) !== part?.number) return true;
    if (!part) {
      await this.end(manager, id, answering.accept, me);
      return false;
    }
    if (part.isAlone) await this.proposals.lockAlone(manager, part.ids);
    const { answered, leftBecause } = await this.proposals.answerPortion(manager, part.ids, answering.accept, answering.reason, me);
    await manager.query('UPDATE answering_part SET answered = $3, left_because = $4 WHERE answering_id = $1 AND number = $2', [
      ...[id, part.number, answered, leftBecause.slice(0, mostTold)],
    ]);
    await manager.query(`UPDATE answering SET alive_until = clock_timestamp() + $2 * interval '1 second' WHERE id = $1`, [
      id,
      aliveSeconds,
    ]);
    return true;
  }

  private async end(manager: EntityManager, id: string, isAccepted: boolean, me: SignedIn): Promise<void> {
    await manager.query('UPDATE answering SET is_going = false, ended_at = clock_timestamp() WHERE id = $1', [id]);
    const [{ total, answered }]: [{ total: number; answered: number }] = await manager.query(
      'SELECT sum(cardinality(ids))::int AS total, sum(answered)::int AS answered FROM answering_part WHERE answering_id = $1',
      [id],
    );
    const [what, verb] = isAccepted ? ['accepted', 'Accepted'] : ['declined', 'Declined'];
    const stayed = answered === total ? '' : `; ${total - answered} were answered by others or stay as they are`;
    await recordEvents(manager, me, this.clock.now(), [{ what, sentence: `${verb} ${answered} of what was proposed${stayed}.` }]);
  }

  /** A portion that faults stays as it is, and the others go on. */
  private async leave(id: string, fault: unknown): Promise<void> {
    const incident = randomUUID();
    this.logger.error({ answering: id, incident, err: fault as Error });
    await this.dataSource.query(
      `UPDATE answering_part SET answered = 0, left_because = ARRAY[$2] WHERE answering_id = $1
       AND number = (SELECT min(number) FROM answering_part WHERE answering_id = $1 AND answered IS NULL)`,
      [id, `Something went wrong with a portion, which stays as it is. Incident ${incident}.`],
    );
  }

  /** Who signed, as it is written: a deputy with whose place it was. */
  private async signer(id: string): Promise<SignedIn> {
    const [row]: { id: string; name: string; deputyOf: string | null; officer: string | null }[] = await this.dataSource.query(
      `SELECT account.id, account.name, deputy_of_id AS "deputyOf", officer.name AS officer FROM answering JOIN account ON account.id = asked_by_id
       LEFT JOIN account officer ON officer.id = deputy_of_id WHERE answering.id = $1`,
      [id],
    );
    if (!row) throw new Error(`the answer ${id} is not on file`);
    return {
      ...{ id: row.id, email: '', sessionId: '', role: 'safety', mustChange: false, deputyships: [] },
      name: row.officer === null ? row.name : `${row.name}, deputy of ${row.officer}`,
      ...(row.deputyOf === null ? {} : { deputyOf: row.deputyOf }),
    };
  }
}
