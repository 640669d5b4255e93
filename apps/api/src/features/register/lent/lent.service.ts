import { createHash, randomUUID } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { type BadInput, ok, readInput } from '#kernel';
import { type Item, type Kit, type Lent, checkKit, item as itemSchema, lenderKinds, lent as lentSchema } from '#tour-file';
import { type Words, tell } from '#words';
import { CLOCK, type Clock, latestDay, today } from '../../../platform/config/config.js';
import { WORDS } from '../../../platform/config/words.js';
import { UnitOfWork } from '../../../platform/database/unit-of-work.js';
import { recordEvents } from '../../../platform/event-log.js';
import { BadInputError, NotFoundError } from '../../../platform/faults/fault.js';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { handOf, propose, waitingFact } from '../../edition/edition.writer.js';
import { holdNewItems } from '../held-items.writer.js';
import { KitReader } from '../kit.reader.js';
import { changeItems, insertItems } from '../kit.writer.js';
import { ReportFileRow } from '../rows.js';
import type { LentKitInput, TakenIn } from './lent.types.js';
import { plateFaults } from './plate-faults.js';

/** Kit of others: taken in, its paper seen or its missing cleared, given back. Every act stays in the log. */
@Injectable()
export class LentService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly kit: KitReader,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(WORDS) private readonly words: Words,
  ) {}

  /** On file from now on, and barred until its paper was seen. What came and went comes again under the same serial. */
  async takeIn(given: LentKitInput, who: SignedIn): Promise<TakenIn> {
    const outcome = await this.unitOfWork.run<TakenIn>(async (manager) => {
      const id = given.serial?.trim() || (await freeName(manager));
      const kit = await this.kit.around(manager, [bareItem(id, given)]);
      const before = kit.items.find((each) => each.id === id);
      const item = this.itemOf(given, id, who, kit, before);
      const [at, day] = [this.clock.now(), today(this.clock)];
      let waits: readonly string[] = [];
      if (before) await changeItems(manager, [item]);
      else {
        const held = handOf(who) === 'other' ? await holdNewItems(manager, kit, [item], day) : { items: [item], waits: [] };
        await insertItems(manager, held.items, who, at);
        await propose(manager, who, at, '', held.waits);
        waits = held.waits.map((each) => tell(this.words.waiting, waitingFact(each)));
      }
      const sentence = `Taken in, kit of ${item.owner ?? ''} (${given.by}), on ${given.on}: ${given.condition.trim()}.`;
      await recordEvents(manager, who, at, [{ what: 'taken in', itemId: id, sentence }]);
      return ok({ itemId: id, waits: [...waits] });
    });
    if (!outcome.ok) throw new Error('nobody refuses this');
    return outcome.value;
  }

  private itemOf(given: LentKitInput, id: string, who: SignedIn, kit: Kit, before: Item | undefined): Item {
    if (before && !before.lent?.givenBack)
      throw new BadInputError([
        {
          field: 'serial',
          value: id,
          wanted: `a serial that is not on file: ${id} is ${before.lent ? 'here already' : 'the company’s own'}`,
        },
      ]);
    if (before && (before.kind !== given.kind || before.model !== given.model))
      throw new BadInputError([
        { field: 'model', value: given.model, wanted: `${before.kind}, ${before.model}, as ${id} was when it was here before` },
      ]);
    const owner = given.owner.trim();
    const faults = [...this.dayFaults('on', given.on), ...plateFaults(given, kit.catalogue)];
    if (owner === '') faults.push({ field: 'owner', value: '', wanted: 'whose it is, by name' });
    if (!lenderKinds.some((each) => each === given.by))
      faults.push({ field: 'by', value: given.by.slice(0, 80), wanted: lenderKinds.join(', ') });
    const lent = {
      by: given.by,
      delivered: { on: given.on, condition: given.condition.trim(), by: who.name },
      ...(given.ratedLoad?.trim() ? { ratedLoad: given.ratedLoad.trim() } : {}),
      ...(given.massKg ? { massKg: given.massKg } : {}),
    };
    const { kind, model, depot, count } = given;
    const bare = { ...before, id, kind, model, depot: depot.trim(), owner, lent, ...(count ? { count } : {}), ...stateOf(before) };
    const read = readInput(itemSchema, { ...bare, examinations: before?.examinations ?? [], events: before?.events ?? [] });
    if (!read.ok) faults.push(...read.error);
    if (faults.length > 0 || !read.ok) throw new BadInputError(faults);
    const wrong = checkKit({ ...kit, items: [...kit.items.filter((each) => each.id !== id), read.value] }).filter(({ field }) =>
      field.startsWith(`items[${kit.items.length - (before ? 1 : 0)}]`),
    );
    if (wrong.length > 0) throw new BadInputError(wrong.map((each) => ({ ...each, field: each.field.replace(/^items\[\d+\]\./, '') })));
    return read.value;
  }

  /** The paper as it was photographed, with who saw it. */
  async seePaper(itemId: string, name: string, type: string, bytes: Buffer, who: SignedIn): Promise<string> {
    const file = name.trim().slice(0, 200) || 'paper';
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    const id = randomUUID();
    const said = `Saw its paper and kept it: ${file}, SHA-256 ${sha256}.`;
    await this.change(itemId, said, 'paper seen', who, async (manager, lent) => {
      const at = this.clock.now();
      await manager
        .getRepository(ReportFileRow)
        .insert({ id, itemId, name: file, type, bytes, sha256, keptBy: who.name, keptById: who.id, keptAt: at });
      return { ...lent, paper: { file: id, name: file, sha256, seenBy: who.name, seenOn: today(this.clock) } };
    });
    return id;
  }

  /** The safety officer answers for it on site, though no paper came with it. */
  async clear(itemId: string, reason: string, who: SignedIn): Promise<void> {
    const because = sentenceOf('reason', reason);
    const said = `Cleared without its paper: ${because}.`;
    await this.change(itemId, said, 'paper cleared', who, (_manager, lent) => {
      if (lent.paper)
        throw new BadInputError([{ field: 'itemId', value: itemId, wanted: 'kit whose paper is missing; this one’s was seen' }]);
      return { ...lent, cleared: { by: who.name, on: today(this.clock), reason: because } };
    });
  }

  async giveBack(itemId: string, on: string, condition: string, who: SignedIn): Promise<void> {
    const state = sentenceOf('condition', condition);
    await this.change(itemId, `Given back on ${on}: ${state}.`, 'given back', who, (_manager, lent, item) => {
      const faults = this.dayFaults('on', on);
      if (on < lent.delivered.on) faults.push({ field: 'on', value: on, wanted: `no earlier than its delivery, ${lent.delivered.on}` });
      if (faults.length > 0) throw new BadInputError(faults);
      return { ...lent, givenBack: { on, condition: state, by: who.name, wasInService: item.state === 'in service' } };
    });
  }

  private async change(
    itemId: string,
    sentence: string,
    what: string,
    who: SignedIn,
    decide: (manager: EntityManager, lent: Lent, item: Item) => Lent | Promise<Lent>,
  ): Promise<void> {
    await this.unitOfWork.run(async (manager) => {
      const [item] = await this.kit.items(manager, [itemId]);
      if (!item?.lent) throw new NotFoundError(`Kit of others ${itemId}`);
      if (item.lent.givenBack)
        throw new BadInputError([
          { field: 'itemId', value: itemId, wanted: `kit that is here; ${itemId} was given back on ${item.lent.givenBack.on}` },
        ]);
      const read = readInput(lentSchema, await decide(manager, item.lent, item));
      if (!read.ok) throw new BadInputError(read.error);
      await changeItems(manager, [
        { ...item, lent: read.value, ...(read.value.givenBack?.wasInService ? { state: 'retired' as const } : {}) },
      ]);
      await recordEvents(manager, who, this.clock.now(), [{ what, itemId, sentence }]);
      return ok(undefined);
    });
  }

  private dayFaults(field: string, on: string): BadInput[] {
    return on > latestDay(this.clock) ? [{ field, value: on, wanted: `no later than today, ${latestDay(this.clock)}` }] : [];
  }
}

/** In service, unless it went back out of service. */
const stateOf = (before: Item | undefined): Partial<Item> =>
  before === undefined || before.lent?.givenBack?.wasInService ? { state: 'in service' } : { state: before.state, reason: before.reason };

/** What is looked for on file: the serial alone counts. */
const bareItem = (id: string, { model, depot }: LentKitInput): Item => ({
  ...{ id, kind: 'case', model, depot, state: 'in service', examinations: [], events: [] },
});

/** Kit without a serial: LENT-1, LENT-2 ... */
async function freeName(manager: EntityManager): Promise<string> {
  const rows: { id: string }[] = await manager.query(`SELECT id FROM item WHERE id LIKE 'LENT-%'`);
  const known = new Set(rows.map((each) => each.id));
  for (let number = 1; ; number++) if (!known.has(`LENT-${number}`)) return `LENT-${number}`;
}

function sentenceOf(field: string, text: string): string {
  const trimmed = text.trim().replace(/\.$/, '');
  if (trimmed === '' || trimmed.length > 300)
    throw new BadInputError([{ field, value: text.slice(0, 80), wanted: 'a sentence of 1 to 300 characters' }]);
  return trimmed;
}
