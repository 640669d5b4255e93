import { Inject, Injectable } from '@nestjs/common';
import { type EntityManager, In } from 'typeorm';
import { unseenIn, wantedSeen } from '#kernel';
import type { Examination } from '#tour-file';
import { type Words, tell } from '#words';
import { CLOCK, type Clock, today } from '../../../platform/config/config.js';
import { WORDS } from '../../../platform/config/words.js';
import { UnitOfWork } from '../../../platform/database/unit-of-work.js';
import { recordEvents } from '../../../platform/event-log.js';
import { BadInputError, NotAllowedError } from '../../../platform/faults/fault.js';
import { asDeputy, covers } from '../../../platform/sign-in/deputy.js';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import {
  type AcceptedField,
  acceptItems,
  acceptModel,
  acceptRecords,
  acceptRule,
  approveSystem,
  contradicted,
} from '../../register/accepted.writer.js';
import { workOutDates } from '../../register/item-dates.writer.js';
import { KitReader } from '../../register/kit.reader.js';
import { byOnePerson, judgesAlone } from '../../one-person/one-person.reader.js';
import { TourReader } from '../../tour/tour.reader.js';
import { waitingFact } from '../edition.writer.js';
import { ProposalWriter } from '../proposal.writer.js';
import { ProposalRow } from '../rows.js';
import { faultsAround } from './faults-around.js';

/** Which proposals: those named, or all up to the newest that was seen. */
export interface Answered {
  readonly ids: readonly string[] | null;
  readonly through: string | null;
}

/** What is answered in one transaction; more is answered in portions (`Answerings`). */
const mostAtOnce = 1_000;

/** What became of a portion: proposals that were answered, and why others stay as they are. */
export interface AnsweredPortion {
  readonly answered: number;
  readonly leftBecause: readonly string[];
}

/** The safety officer's answer to what waits: one act over one or all, with a reason, kept with editions and events. */
@Injectable()
export class ProposalService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly writer: ProposalWriter,
    private readonly kit: KitReader,
    private readonly tours: TourReader,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(WORDS) private readonly words: Words,
  ) {}

  /** Gives how many were answered. */
  async answer(which: Answered, isAccepted: boolean, reason: string, me: SignedIn): Promise<number> {
    const because = reasonFrom(reason);
    const outcome = await this.unitOfWork.run<number>(async (manager) => {
      const rows = await this.open(manager, which);
      if (isAccepted && rows.some((each) => each.proposedById === me.id) && !(await judgesAlone(manager, me)))
        throw new NotAllowedError(notOwn);
      const hand = await actingOn(manager, rows, me);
      const answered = isAccepted ? await this.accept(manager, rows, because, hand) : await this.decline(manager, rows, because, hand);
      await this.tell(manager, answered, isAccepted, because, hand);
      await workOutDates(manager, today(this.clock));
      return { ok: true, value: answered.length };
    });
    return outcome.ok ? outcome.value : 0;
  }

  /** One portion of a larger answer, inside the caller's transaction: what does not agree with what is on file stays and is told, the others do not wait for it. */
  async answerPortion(
    manager: EntityManager,
    ids: readonly string[],
    isAccepted: boolean,
    because: string,
    me: SignedIn,
  ): Promise<AnsweredPortion> {
    const rows = await this.openAmong(manager, ids);
    const isAlone = isAccepted && (await judgesAlone(manager, me));
    const mine = rows.filter((each) => isAccepted && !isAlone && each.proposedById === me.id);
    const others = rows.filter((each) => !mine.includes(each));
    const { answered, leftBecause } = isAccepted
      ? await this.acceptWhatAgrees(manager, others, because, me)
      : { answered: await this.decline(manager, others, because, me), leftBecause: [] };
    if (answered.length > 0) await this.tellEach(manager, answered, isAccepted, because, me);
    return { answered: answered.length, leftBecause: [...mine.slice(0, 1).map((each) => `${each.subject}: ${notOwn}`), ...leftBecause] };
  }

  /** What is decided by its items and their records alone: all of it is locked, and nobody overtakes it. */
  async lockAlone(manager: EntityManager, ids: readonly string[]): Promise<void> {
    await manager.query('SELECT id FROM item WHERE id IN (SELECT subject FROM proposal WHERE id = ANY($1)) ORDER BY id FOR UPDATE', [ids]);
    await manager.query('SELECT id FROM proposal WHERE id = ANY($1) ORDER BY id FOR UPDATE', [ids]);
  }

  private openAmong(manager: EntityManager, ids: readonly string[]): Promise<ProposalRow[]> {
    return manager.getRepository(ProposalRow).find({ where: { id: In([...ids]), state: 'proposed' }, order: { id: 'ASC' } });
  }

  /** All at once where all agree; else by halves, down to the one thing that does not. */
  private async acceptWhatAgrees(
    manager: EntityManager,
    rows: readonly ProposalRow[],
    because: string,
    me: SignedIn,
  ): Promise<{ readonly answered: readonly ProposalRow[]; readonly leftBecause: readonly string[] }> {
    if (rows.length === 0) return { answered: [], leftBecause: [] };
    try {
      const answered = await manager.transaction((inner) => this.accept(inner, [...rows], because, me));
      return { answered, leftBecause: rows.filter((each) => !answered.includes(each)).map((each) => `${each.subject}: wanted ${byHand}`) };
    } catch (fault) {
      if (!(fault instanceof BadInputError)) throw fault;
      const things = byThing(rows);
      if (things.length === 1) return { answered: [], leftBecause: [`${rows[0]?.subject}: ${wantedBy(fault)}`] };
      const half = Math.ceil(things.length / 2);
      const first = await this.acceptWhatAgrees(manager, things.slice(0, half).flat(), because, me);
      const second = await this.acceptWhatAgrees(manager, things.slice(half).flat(), because, me);
      return { answered: [...first.answered, ...second.answered], leftBecause: [...first.leftBecause, ...second.leftBecause] };
    }
  }

  private async open(manager: EntityManager, { ids, through }: Answered): Promise<ProposalRow[]> {
    const all = manager.getRepository(ProposalRow);
    if (ids === null && through === null)
      throw new BadInputError([{ field: 'ids', value: null, wanted: 'the proposals that are answered, or the newest that was seen' }]);
    for (const id of [...(ids ?? []), ...(through === null ? [] : [through])])
      if (!/^\d{1,18}$/.test(id)) throw new BadInputError([{ field: 'ids', value: id.slice(0, 80), wanted: 'the id of a proposal' }]);
    const rows = await all
      .createQueryBuilder('proposal')
      .where(`state = 'proposed'`)
      .andWhere(ids === null ? 'id <= :through' : { id: In([...ids]) }, { through })
      .orderBy('id')
      .limit(mostAtOnce + 1)
      .getMany();
    if (rows.length > mostAtOnce)
      throw new BadInputError([
        { field: 'through', value: through, wanted: `at most ${mostAtOnce} at once; more are answered by answerAllProposals` },
      ]);
    const found = new Set(rows.map((each) => each.id));
    const gone = (ids ?? []).filter((id) => !found.has(id));
    if (gone.length > 0)
      throw new BadInputError(
        gone.map((id) => ({
          field: 'ids',
          value: id,
          wanted: 'a proposal that still waits: this one was answered or another value was proposed; look again',
        })),
      );
    return rows;
  }

  private async accept(manager: EntityManager, rows: ProposalRow[], because: string, me: SignedIn): Promise<ProposalRow[]> {
    const at = this.clock.now();
    const records = rows
      .filter((each) => each.kind === 'record')
      .map((row) => ({ row, item: row.subject, data: row.wanted as Examination }));
    const against = new Set((await contradicted(manager, records)).map(({ item, on }) => `${item} ${on}`));
    const isLeft = (row: ProposalRow) => row.kind === 'record' && against.has(`${row.subject} ${(row.wanted as Examination).on}`);
    const accepted = rows.filter((row) => !isLeft(row));
    if (accepted.length === 0 && rows.length > 0) throw new BadInputError([{ field: 'ids', value: rows[0]?.subject, wanted: byHand }]);
    for (const [subject, fields] of fieldsOf(accepted, 'model')) await acceptModel(manager, subject, fields);
    for (const [id, fields] of fieldsOf(accepted, 'load rule')) await acceptRule(manager, 'load', id, fields);
    for (const [id, fields] of fieldsOf(accepted, 'examination rule')) await acceptRule(manager, 'examination', id, fields);
    for (const [id] of fieldsOf(accepted, 'system')) await approveSystem(manager, id, null, me.name, today(this.clock));
    await acceptItems(manager, fieldsOf(accepted, 'item'));
    await acceptRecords(
      manager,
      records.filter(({ row }) => !isLeft(row)),
      me,
      at,
    );
    const judged = accepted.filter((each) => each.kind !== 'record' && each.field !== '');
    if (judged.length > 0) await this.mustAgree(manager, judged);
    await this.writer.closeAccepted(manager, accepted, me, at, because);
    return accepted;
  }

  /** What was on file while the proposal waited may have changed since. */
  private async mustAgree(manager: EntityManager, accepted: readonly ProposalRow[]): Promise<void> {
    const isOfItems = accepted.every((each) => each.kind === 'item');
    const changed = isOfItems ? new Set(accepted.map((each) => each.subject)) : 'everything';
    const faults = await faultsAround(manager, { kit: this.kit, tours: this.tours }, changed);
    if (faults.length > 0) throw new BadInputError(faults.slice(0, 50));
  }

  /** A system goes back to what was approved before; everything else stays as it is. */
  private async decline(manager: EntityManager, rows: ProposalRow[], because: string, me: SignedIn): Promise<ProposalRow[]> {
    for (const { kind, subject, was } of rows)
      if (kind === 'system' && was !== null) await approveSystem(manager, subject, was as object, me.name, today(this.clock));
    await this.writer.close(manager, rows, 'declined', me, this.clock.now(), because);
    return rows;
  }

  /** On the record of every item what was decided of it, and of everything once who decided how much. */
  private async tell(
    manager: EntityManager,
    rows: readonly ProposalRow[],
    isAccepted: boolean,
    because: string,
    me: SignedIn,
  ): Promise<void> {
    const [what, verb] = isAccepted ? ['accepted', 'Accepted'] : ['declined', 'Declined'];
    const sentence = `${verb} ${rows.length} of what was proposed: ${because}.`;
    await recordEvents(manager, me, this.clock.now(), [{ what, sentence }]);
    await this.tellEach(manager, rows, isAccepted, because, me);
  }

  private tellEach(
    manager: EntityManager,
    rows: readonly ProposalRow[],
    isAccepted: boolean,
    because: string,
    me: SignedIn,
  ): Promise<void> {
    const [what, verb] = isAccepted ? ['accepted', 'Accepted'] : ['declined', 'Declined'];
    return recordEvents(
      manager,
      me,
      this.clock.now(),
      rows.map((row) => ({
        what,
        ...(row.kind === 'item' || row.kind === 'record' ? { itemId: row.subject } : {}),
        sentence: `${verb}: ${tell(this.words.proposed, waitingFact(row))}. ${because}.${isAccepted && row.proposedById === me.id ? byOnePerson : ''}`,
      })),
    );
  }
}

const byHand = 'a record by hand: a failed examination of the same day is on file';

export const notOwn = 'Who proposes does not accept: two pairs of eyes. Another safety officer does.';

/** Why: kept with what it decides. */
export function reasonFrom(reason: string): string {
  const because = reason.trim();
  if (because === '' || because.length > 300)
    throw new BadInputError([
      { field: 'reason', value: reason.slice(0, 80), wanted: 'why, in 1 to 300 characters: it is kept with what it decides' },
    ]);
  const unseen = unseenIn(because);
  if (unseen !== undefined) throw new BadInputError([{ field: 'reason', value: because.slice(0, 80), wanted: wantedSeen(unseen) }]);
  return because;
}

/** An item with its records is one thing. */
function byThing(rows: readonly ProposalRow[]): ProposalRow[][] {
  const found = new Map<string, ProposalRow[]>();
  for (const row of rows) {
    const thing = `${row.kind === 'record' ? 'item' : row.kind} ${row.subject}`;
    found.set(thing, [...(found.get(thing) ?? []), row]);
  }
  return [...found.values()];
}

const wantedBy = ({ faults }: BadInputError): string =>
  faults
    .slice(0, 2)
    .map(({ field, wanted }) => `${field}: wanted ${wanted}`)
    .join('; ');

/** The safety officer, or a deputy within one deputyship: of a depot or a tour its items and their records, of the house everything. */
async function actingOn(manager: EntityManager, rows: readonly ProposalRow[], me: SignedIn): Promise<SignedIn> {
  if (me.role === 'safety') return me;
  for (const each of me.deputyships) {
    const left = [];
    for (const { kind, subject } of rows)
      if (!(await covers(manager, each, kind === 'item' || kind === 'record' ? { item: subject } : {}))) left.push(subject);
    if (left.length === 0) return asDeputy(me, each);
  }
  throw new NotAllowedError(
    'You are deputy for a part of the house: what is beyond it the safety officer answers. Tick what is of your part alone.',
  );
}

function fieldsOf(rows: readonly ProposalRow[], kind: ProposalRow['kind']): ReadonlyMap<string, readonly AcceptedField[]> {
  const found = new Map<string, AcceptedField[]>();
  for (const { subject, field, wanted } of rows.filter((each) => each.kind === kind))
    found.set(subject, [...(found.get(subject) ?? []), { field, wanted }]);
  return found;
}
