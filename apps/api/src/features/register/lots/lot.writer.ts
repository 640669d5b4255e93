import { Inject, Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { BadInput } from '#kernel';
import { CLOCK, type Clock } from '../../../platform/config/config.js';
import { recordEvents } from '../../../platform/event-log.js';
import { BadInputError, NotAllowedError, NotFoundError } from '../../../platform/faults/fault.js';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { ExaminationWriter } from '../examination.writer.js';
import { ItemRow } from '../rows.js';
import { copyRecords } from '../same-records.writer.js';
import { LotSplitRow } from './rows.js';

/** Where pieces go that are taken out: nobody uses them until that is lifted, or never again. */
const takenStates = ['quarantined', 'retired'] as const;
export type TakenState = (typeof takenStates)[number];

export interface ToSplit {
  readonly itemId: string;
  readonly pieces: number;
  readonly state: string;
  readonly reason: string;
  /** The failed examination of these pieces alone; the safety officer's. */
  readonly examination: unknown;
}

export interface Split {
  readonly taken: string;
  readonly left: number;
}

/**
 * The only way to take some pieces out of a batch: a new batch of that many, the old one that much smaller, in one transaction. Records of the batch are
 * records of both: they are written once more for the new one, so that it is judged by them as the old one is.
 */
@Injectable()
export class LotWriter {
  constructor(
    private readonly examinations: ExaminationWriter,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  /** The same for any number of its pieces, all of them too. */
  async takeOut(manager: EntityManager, asked: ToSplit, who: SignedIn): Promise<string> {
    const lot = await manager.getRepository(ItemRow).findOneBy({ id: asked.itemId });
    if (lot?.count !== asked.pieces || lot.state === 'retired') return (await this.split(manager, asked, who)).taken;
    await takeWhole(manager, lot, asked, this.clock.now(), who);
    return lot.id;
  }

  async split(manager: EntityManager, asked: ToSplit, who: SignedIn): Promise<Split> {
    const { itemId, pieces, state, examination } = asked;
    if (examination !== null && who.role !== 'safety')
      throw new NotAllowedError('Examinations are recorded by the safety officer; anybody may quarantine.');
    const reason = asked.reason.trim().replace(/\.$/, '');
    const items = manager.getRepository(ItemRow);
    const lot = await items.findOneBy({ id: itemId });
    if (!lot) throw new NotFoundError(`The item ${itemId}`);
    const faults = faultsOf(lot, pieces, state, reason, examination);
    if (faults.length > 0 || lot.count === null) throw new BadInputError(faults);
    const [{ through }] = await manager.query<[{ through: string }]>('SELECT coalesce(max(id), 0)::text AS through FROM event');
    const childId = await freeName(manager, itemId);
    const { kind, model, depot, inItem, isAccepted } = lot;
    const rest = { ...lot.rest, reason };
    await items.insert({ id: childId, kind, model, depot, inItem, isAccepted, state: state as TakenState, count: pieces, rest });
    const left = lot.count - pieces;
    await items.update({ id: itemId }, { count: left });
    await manager.getRepository(LotSplitRow).insert({
      ...{ parentId: itemId, childId, pieces, ofPieces: lot.count, state, reason },
      ...{ madeById: who.id, madeAt: this.clock.now(), throughEvent: through },
    });
    await copyRecords(manager, itemId, childId);
    await endProposedCount(manager, itemId, this.clock.now());
    await recordEvents(manager, who, this.clock.now(), [
      { what: 'split', itemId, sentence: `${pieces} of ${lot.count} taken out into ${childId} (${state}): ${reason}. ${left} are left.` },
      { what: state, itemId: childId, sentence: `${pieces} of ${lot.count} pieces of ${itemId}, ${state}: ${reason}.` },
    ]);
    if (examination !== null)
      await this.examinations.record(manager, { itemId: childId, examination, supersedes: null, reason: '', reportsOf: [itemId] }, who);
    return { taken: childId, left };
  }
}

/** Where all that is left of a batch goes, the batch goes. */
async function takeWhole(manager: EntityManager, lot: ItemRow, { state, reason }: ToSplit, at: Date, who: SignedIn): Promise<void> {
  await manager.getRepository(ItemRow).update({ id: lot.id }, { state: state as TakenState, rest: { ...lot.rest, reason } });
  await recordEvents(manager, who, at, [{ what: state, itemId: lot.id, sentence: `All ${lot.count} pieces ${state}: ${reason}.` }]);
}

function faultsOf(lot: ItemRow, pieces: number, state: string, reason: string, examination: unknown): BadInput[] {
  const { id, count } = lot;
  const faults: BadInput[] = [];
  if (count === null) faults.push({ field: 'itemId', value: id, wanted: 'a batch with a count; one thing is quarantined whole' });
  else if (lot.state === 'retired') faults.push({ field: 'itemId', value: id, wanted: 'a batch that is not retired' });
  else if (!Number.isInteger(pieces) || pieces < 1 || pieces >= count)
    faults.push({
      field: 'pieces',
      value: pieces,
      wanted: `a whole number from 1 to ${count - 1}: ${id} holds ${count}, and all of them are quarantined as the batch they are`,
    });
  if (!(takenStates as readonly string[]).includes(state))
    faults.push({ field: 'state', value: state.slice(0, 80), wanted: takenStates.join(' or ') });
  if (reason === '' || reason.length > 300)
    faults.push({ field: 'reason', value: reason.slice(0, 80), wanted: 'a sentence of 1 to 300 characters' });
  const outcome = (examination as { outcome?: unknown } | null | undefined)?.outcome;
  if (examination !== null && outcome !== 'fail')
    faults.push({ field: 'examination.outcome', value: outcome, wanted: 'fail: what passed stays in its batch' });
  return faults;
}

/** SH-1/2 is the second part that was taken out of SH-1. */
async function freeName(manager: EntityManager, itemId: string): Promise<string> {
  for (let number = 1; ; number++) {
    const id = `${itemId}/${number}`;
    if (!(await manager.getRepository(ItemRow).existsBy({ id }))) return id;
  }
}

/** A count that waited was asked for of a batch that is another now. */
async function endProposedCount(manager: EntityManager, itemId: string, at: Date): Promise<void> {
  await manager.query(
    `UPDATE proposal SET state = 'replaced', decided_at = $2, decided_because = 'pieces were taken out of the batch' WHERE kind = 'item' AND subject = $1 AND field = 'count' AND state = 'proposed'`,
    [itemId, at],
  );
}
