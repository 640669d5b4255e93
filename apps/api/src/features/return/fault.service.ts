import { createHash, randomUUID } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { type BadInput, ok } from '#kernel';
import { type FaultFound, faultKinds, faultStates } from '#pack-plan';
import { CLOCK, type Clock, today } from '../../platform/config/config.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { BadInputError, NotFoundError } from '../../platform/faults/fault.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { insertIncident, quarantineItem } from '../register/kit.writer.js';
import { LotWriter } from '../register/lots/lot.writer.js';
import { ItemRow, ReportFileRow } from '../register/rows.js';
import { keepFloorRecords } from './floor-record.writer.js';

const mayFollow: Readonly<Record<FaultFound['kind'], readonly FaultFound['then'][]>> = {
  rigging: ['out'],
  sound: ['out', 'bottom'],
  looks: ['flies'],
};

/** Somebody finds a fault: its kind says what follows, and that follows at once. */
@Injectable()
export class FaultService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly lots: LotWriter,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async report(itemId: string, asked: Omit<FaultFound, 'kind' | 'then'> & { kind: string; then: string }, who: SignedIn): Promise<void> {
    await this.unitOfWork.run<void>(async (manager) => {
      const item = await itemOf(manager, itemId);
      const fault = readFault(item, asked);
      await this.keep(manager, item, fault, who);
      return ok(undefined);
    });
  }

  /** What was found, and what follows of it. */
  async keep(manager: EntityManager, item: ItemRow, fault: FaultFound, who: SignedIn): Promise<void> {
    const at = this.clock.now();
    const concerned = fault.then === 'out' ? await this.takeOut(manager, item, fault, who) : item.id;
    await keepFloorRecords(
      manager,
      null,
      [{ itemId: concerned, kind: 'fault', data: concerned === item.id ? fault : { ...fault, pieces: null } }],
      at,
      who,
    );
    if (concerned !== item.id) await keepFloorRecords(manager, null, [{ itemId: item.id, kind: 'fault', data: fault }], at, who);
    await recordEvents(manager, who, at, [
      { what: 'fault', itemId: concerned, sentence: `Fault of ${fault.kind}: ${fault.what}. ${capital(faultStates[fault.then])}.` },
    ]);
  }

  /** A picture of what is wrong; kept as it was taken. */
  async keepPicture(itemId: string, name: string, type: string, bytes: Buffer, who: SignedIn): Promise<string> {
    const file = name.trim().slice(0, 200) || 'picture';
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    const id = randomUUID();
    const outcome = await this.unitOfWork.run<string>(async (manager) => {
      await itemOf(manager, itemId);
      const at = this.clock.now();
      await manager
        .getRepository(ReportFileRow)
        .insert({ id, itemId, name: file, type, bytes, sha256, keptBy: who.name, keptById: who.id, keptAt: at });
      await recordEvents(manager, who, at, [
        { what: 'picture', itemId, sentence: `Kept a picture of it: ${file}, SHA-256 ${sha256}, /api/reports/${id}` },
      ]);
      return ok(id);
    });
    if (!outcome.ok) throw new Error('a picture is never refused');
    return outcome.value;
  }

  /** Out of service from now on; of a batch the pieces alone. Of rigging the gate has an incident as well: an examination has to answer it. Gives what is out. */
  private async takeOut(manager: EntityManager, item: ItemRow, { kind, what, pieces }: FaultFound, who: SignedIn): Promise<string> {
    const asked = { itemId: item.id, state: 'quarantined', reason: what, examination: null };
    const out = pieces === null ? item.id : await this.lots.takeOut(manager, { ...asked, pieces }, who);
    if (pieces === null) {
      await quarantineItem(manager, out, what);
      await recordEvents(manager, who, this.clock.now(), [{ what: 'quarantined', itemId: out, sentence: `Quarantined: ${what}.` }]);
    }
    if (kind === 'rigging') await insertIncident(manager, out, today(this.clock), what);
    return out;
  }
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

async function itemOf(manager: EntityManager, id: string): Promise<ItemRow> {
  const item = await manager.getRepository(ItemRow).findOneBy({ id });
  if (!item) throw new NotFoundError(`The item ${id.slice(0, 80)}`);
  return item;
}

function readFault(item: ItemRow, asked: { kind: string; what: string; then: string; pieces: number | null }): FaultFound {
  const faults: BadInput[] = [];
  const what = asked.what.trim().replace(/\.$/, '');
  const kind = faultKinds.find((each) => each === asked.kind);
  const then = kind && mayFollow[kind].find((each) => each === asked.then);
  if (!kind) faults.push({ field: 'kind', value: asked.kind.slice(0, 80), wanted: faultKinds.join(', ') });
  else if (!then) faults.push({ field: 'then', value: asked.then.slice(0, 80), wanted: mayFollow[kind].join(' or ') });
  if (what === '' || what.length > 300)
    faults.push({ field: 'what', value: asked.what.slice(0, 80), wanted: 'what is wrong, in 1 to 300 characters' });
  if (item.state === 'retired') faults.push({ field: 'itemId', value: item.id, wanted: 'an item that is not retired' });
  const { count } = item;
  const { pieces } = asked;
  if (count === null && pieces !== null) faults.push({ field: 'pieces', value: pieces, wanted: 'nothing: it is one thing' });
  if (count !== null && (pieces === null || !Number.isInteger(pieces) || pieces < 1 || pieces > count))
    faults.push({ field: 'pieces', value: pieces, wanted: `how many of its ${count} pieces, a whole number from 1` });
  if (faults.length > 0 || !kind || !then) throw new BadInputError(faults);
  return { kind, what, then, pieces };
}
