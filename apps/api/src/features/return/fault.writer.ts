import { Inject, Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { type FaultFound, faultStates } from '#pack-plan';
import { CLOCK, type Clock, today } from '../../platform/config/config.js';
import { recordEvents } from '../../platform/event-log.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import type { FloorItem } from '../register/floor-item.reader.js';
import { insertIncident, quarantineItem } from '../register/kit.writer.js';
import { LotWriter } from '../register/lots/lot.writer.js';
import { keepFloorRecords } from './floor-record.writer.js';

/** Puts a fault on record, and what follows of it. */
@Injectable()
export class FaultWriter {
  constructor(
    private readonly lots: LotWriter,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async keep(manager: EntityManager, item: FloorItem, fault: FaultFound, who: SignedIn): Promise<void> {
    const at = this.clock.now();
    const concerned = fault.then === 'out' ? await this.takeOut(manager, item, fault, who) : item.id;
    const isPart = concerned !== item.id;
    await keepFloorRecords(
      manager,
      null,
      [{ itemId: concerned, kind: 'fault', data: isPart ? { ...fault, pieces: null } : fault }],
      at,
      who,
    );
    if (isPart) await keepFloorRecords(manager, null, [{ itemId: item.id, kind: 'fault', data: fault }], at, who);
    const state = faultStates[fault.then];
    await recordEvents(manager, who, at, [
      { what: 'fault', itemId: concerned, sentence: `Fault of ${fault.kind}: ${fault.what}. It is ${state} from now on.` },
    ]);
  }

  /** Out of service from now on; of a batch the pieces alone. Of rigging the gate has an incident as well: an examination has to answer it. Gives what is out. */
  private async takeOut(manager: EntityManager, item: FloorItem, { kind, what, pieces }: FaultFound, who: SignedIn): Promise<string> {
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
