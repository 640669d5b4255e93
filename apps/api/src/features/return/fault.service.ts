import { Injectable } from '@nestjs/common';
import { type BadInput, ok } from '#kernel';
import { type FaultFound, faultKinds } from '#pack-plan';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { BadInputError } from '../../platform/faults/fault.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { type FloorItem, floorItem } from '../register/floor-item.reader.js';
import { FaultWriter } from './fault.writer.js';

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
    private readonly writer: FaultWriter,
  ) {}

  async report(itemId: string, asked: Omit<FaultFound, 'kind' | 'then'> & { kind: string; then: string }, who: SignedIn): Promise<void> {
    await this.unitOfWork.run<void>(async (manager) => {
      const item = await floorItem(manager, itemId);
      await this.writer.keep(manager, item, readFault(item, asked), who);
      return ok(undefined);
    });
  }
}

function readFault(item: FloorItem, asked: { kind: string; what: string; then: string; pieces: number | null }): FaultFound {
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
