import { Inject, Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { z } from 'zod';
import { decideChange, loadRuleGuard } from '#editions';
import { canonicalJson, mergeEdit, readInput } from '#kernel';
import { loadRule, riggingSystem } from '#tour-file';
import { type Words, tell } from '#words';
import { CLOCK, type Clock, today } from '../../platform/config/config.js';
import { WORDS } from '../../platform/config/words.js';
import { clashInWords } from '../../platform/faults/clash.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { BadInputError, NotAllowedError, NotFoundError } from '../../platform/faults/fault.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { type NewProposal, handOf, keepEditions, propose, proposedFields, reasonFaults, waitingFact } from '../edition/edition.writer.js';
import { ProposalWriter } from '../edition/proposal.writer.js';
import { byOnePerson, judgesAlone } from '../one-person/one-person.reader.js';
import { RuleRow } from './rows.js';

/** Rigging systems and load regimes as people write them, and the safety officer's approval. */
@Injectable()
export class RuleService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly proposals: ProposalWriter,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(WORDS) private readonly words: Words,
  ) {}

  /** Against the maker's manual, by another person than the one who wrote the data. */
  async approveSystem(id: string, who: SignedIn): Promise<void> {
    await this.unitOfWork.run(async (manager) => {
      const rules = manager.getRepository(RuleRow);
      const row = await rules.findOneBy({ kind: 'system', id });
      if (!row) throw new NotFoundError(`The rigging system ${id}`);
      const open = await this.proposals.openOf(manager, { kind: 'system', subject: id });
      const isOwn = open?.proposedById === who.id;
      if (isOwn && !(await judgesAlone(manager, who)))
        throw new NotAllowedError('Who proposes does not accept: two pairs of eyes. Another safety officer does.');
      await rules.update({ kind: 'system', id }, { data: { ...row.data, approved: { by: who.name, on: today(this.clock) } } });
      if (open) await this.proposals.closeAccepted(manager, [open], who, this.clock.now(), 'against the manual');
      await recordEvents(manager, who, this.clock.now(), [
        { what: 'approved', sentence: `Approved the data of the rigging system ${id}.${isOwn ? byOnePerson : ''}` },
      ]);
      return { ok: true, value: undefined };
    });
  }

  /** A rigging system from the maker's manual; whoever changes it takes its approval away. */
  async saveSystem(input: unknown, was: unknown, who: SignedIn): Promise<void> {
    const schema = riggingSystem.omit({ approved: true });
    const { id } = inputOf(schema, input);
    await this.unitOfWork.run(async (manager) => {
      const onFile = await manager.getRepository(RuleRow).findOneBy({ kind: 'system', id });
      const data = await this.ruleToSave(manager, { kind: 'system', id }, schema, input, was);
      if (isAsOnFile(onFile, data)) return { ok: true, value: undefined };
      await manager.getRepository(RuleRow).upsert({ kind: 'system', id, data }, ['kind', 'id']);
      const of = { kind: 'system', subject: id } as const;
      const change = { field: '', was: await this.lastApproved(manager, id, onFile), wanted: data };
      if (handOf(who) === 'other') await propose(manager, who, this.clock.now(), '', [{ ...of, ...change }]);
      else await keepEditions(manager, who, this.clock.now(), '', [{ ...of, changes: [change] }]);
      await recordEvents(manager, who, this.clock.now(), [
        { what: 'changed', sentence: `Wrote the data of the rigging system ${id}; it waits for approval.` },
      ]);
      return { ok: true, value: undefined };
    });
  }

  /** What the safety officer approved last, without who did; undefined where nothing was. */
  private async lastApproved(manager: EntityManager, id: string, onFile: RuleRow | null): Promise<unknown> {
    const { approved, ...data } = (onFile?.data ?? {}) as { approved?: object };
    if (approved) return data;
    return (await this.proposals.openOf(manager, { kind: 'system', subject: id }))?.was ?? undefined;
  }

  /** A load regime. Plans made under it become stale. Gives what waits for the safety officer, in words. */
  async saveLoadRule(input: unknown, was: unknown, reason: string, who: SignedIn): Promise<readonly string[]> {
    const schema = loadRule.omit({ unaccepted: true });
    const { id } = inputOf(schema, input);
    const hand = handOf(who);
    const outcome = await this.unitOfWork.run<readonly string[]>(async (manager) => {
      const rules = manager.getRepository(RuleRow);
      const onFile = await rules.findOneBy({ kind: 'load', id });
      const data = await this.ruleToSave(manager, { kind: 'load', id }, schema, input, was);
      if (isAsOnFile(onFile, data)) return { ok: true, value: [] };
      const isNew = !onFile?.isAccepted;
      const { inForce, waits, atOnce } = decideChange(loadRuleGuard, onFile?.data ?? data, data);
      const faults = reasonFaults(hand, waits, reason);
      if (faults.length > 0) throw new BadInputError(faults);
      const isHeld = hand === 'other';
      await rules.upsert({ kind: 'load', id, data: isHeld && !isNew ? inForce : data, isAccepted: onFile?.isAccepted ?? !isHeld }, [
        'kind',
        'id',
      ]);
      const of = { kind: 'load rule', subject: id } as const;
      const proposed: readonly NewProposal[] = !isHeld ? [] : isNew ? [{ ...of, field: '', wanted: data }] : proposedFields(of, waits);
      const at = this.clock.now();
      await propose(manager, who, at, reason, proposed);
      if (onFile) await keepEditions(manager, who, at, reason, [{ ...of, changes: isHeld ? atOnce : [...atOnce, ...waits] }]);
      const told = proposed.map((each) => tell(this.words.waiting, waitingFact(each)));
      await recordEvents(manager, who, at, [
        { what: 'changed', sentence: `Wrote the load regime ${id}: ${data.title}.` },
        ...told.map((sentence) => ({ what: 'proposed', sentence })),
      ]);
      return { ok: true, value: told };
    });
    return outcome.ok ? outcome.value : [];
  }

  /** What was written over what stands on file now; what others wrote meanwhile stays, and a field that both wrote is refused with both values. */
  private async ruleToSave<T>(
    manager: EntityManager,
    key: Pick<RuleRow, 'kind' | 'id'>,
    schema: z.ZodType<T>,
    input: unknown,
    was: unknown,
  ): Promise<T> {
    const row = await manager.getRepository(RuleRow).findOneBy(key);
    if (!row) return inputOf(schema, input);
    if (was === null || typeof was !== 'object')
      throw new BadInputError([{ field: 'was', value: null, wanted: `${key.id} as it was read: it is on file already` }]);
    const { approved: _approved, ...now } = row.data as Record<string, unknown>;
    const { approved: _was, ...read } = was as Record<string, unknown>;
    const outcome = mergeEdit(read, inputOf(schema, input) as Record<string, unknown>, now);
    if ('merged' in outcome) return inputOf(schema, outcome.merged);
    throw new BadInputError(
      outcome.clashes.map(({ field, yours, onFile }) => ({
        field,
        value: yours ?? null,
        named: this.words.guarded(field),
        wanted: clashInWords({ was: read[field], yours, onFile }),
        onFile: onFile ?? null,
      })),
    );
  }
}

/** Saved as it stands: nothing is written, and an approval stays. */
function isAsOnFile(row: RuleRow | null, data: object): boolean {
  if (!row) return false;
  const { approved: _approved, ...onFile } = row.data as Record<string, unknown>;
  return canonicalJson(onFile) === canonicalJson(data);
}

function inputOf<T>(schema: z.ZodType<T>, input: unknown): T {
  const read = readInput(schema, input);
  if (!read.ok) throw new BadInputError(read.error);
  return read.value;
}
