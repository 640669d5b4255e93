import { Inject, Injectable } from '@nestjs/common';
import { canonicalJson, readInput } from '#kernel';
import { type ExaminationRule, examinationRule } from '#tour-file';
import { CLOCK, type Clock } from '../../../platform/config/config.js';
import { UnitOfWork } from '../../../platform/database/unit-of-work.js';
import { recordEvents } from '../../../platform/event-log.js';
import { BadInputError, NotFoundError } from '../../../platform/faults/fault.js';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { keepEditions } from '../../edition/edition.writer.js';
import { idOfRule } from '../added-kit.writer.js';
import { RuleRow } from '../rows.js';

/** How often what is examined, by jurisdiction: the safety officer puts rules on file, one or a set, and takes them out; each change is an edition. */
@Injectable()
export class ExaminationRulesService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  /** All of them, or none; one that is on file already in the same words stays. */
  async add(inputs: readonly unknown[], who: SignedIn): Promise<void> {
    if (inputs.length === 0 || inputs.length > 50)
      throw new BadInputError([{ field: 'rules', value: `a list of ${inputs.length}`, wanted: '1 to 50 rules' }]);
    const rules = inputs.map((input, index) => {
      const read = readInput(examinationRule, input);
      if (!read.ok) throw new BadInputError(read.error.map((each) => ({ ...each, field: `rules[${index}].${each.field}` })));
      return read.value;
    });
    await this.unitOfWork.run(async (manager) => {
      const rows = manager.getRepository(RuleRow);
      const at = this.clock.now();
      for (const data of rules) {
        const id = idOfRule(data);
        const before = await rows.findOneBy({ kind: 'examination', id });
        if (before?.isAccepted && canonicalJson(before.data) === canonicalJson(data)) continue;
        await rows.upsert({ kind: 'examination', id, data, isAccepted: true }, ['kind', 'id']);
        const change = { field: '', was: before?.data, wanted: data };
        await keepEditions(manager, who, at, '', [{ kind: 'examination rule', subject: id, changes: [change] }]);
        await recordEvents(manager, who, at, [{ what: 'changed', sentence: `Wrote the examination rule ${wordsOf(data)}.` }]);
      }
      return { ok: true, value: undefined };
    });
  }

  /** The rule `input` in the place of `wasInput`, which must be on file as it was read. The one before is kept as an edition. */
  async change(wasInput: unknown, input: unknown, reason: string, who: SignedIn): Promise<void> {
    const [was, data] = [ruleOf('was', wasInput), ruleOf('rule', input)];
    const why = reasonOf(reason, 'why it holds otherwise');
    await this.unitOfWork.run(async (manager) => {
      const rows = manager.getRepository(RuleRow);
      const [idBefore, id] = [idOfRule(was), idOfRule(data)];
      const before = await rows.findOneBy({ kind: 'examination', id: idBefore });
      if (!before) throw new NotFoundError('This examination rule');
      if (canonicalJson(before.data) !== canonicalJson(was))
        throw new BadInputError([{ field: 'was', value: idBefore, wanted: 'the rule as it is on file: somebody changed it meanwhile' }]);
      if (canonicalJson(was) === canonicalJson(data)) return { ok: true, value: undefined };
      if (id !== idBefore && (await rows.existsBy({ kind: 'examination', id })))
        throw new BadInputError([{ field: 'rule.intervals', value: id, wanted: 'a rule that is not on file already' }]);
      await rows.update({ kind: 'examination', id: idBefore }, { id, data, isAccepted: true });
      const at = this.clock.now();
      const change = { field: '', was: before.data, wanted: data };
      await keepEditions(manager, who, at, why, [{ kind: 'examination rule', subject: id, changes: [change] }]);
      await recordEvents(manager, who, at, [
        { what: 'changed', sentence: `Changed the examination rule ${wordsOf(was)}, into one ${wordsOf(data)}: ${why}.` },
      ]);
      return { ok: true, value: undefined };
    });
  }

  async remove(input: unknown, reason: string, who: SignedIn): Promise<void> {
    const read = readInput(examinationRule, input);
    if (!read.ok) throw new BadInputError(read.error);
    const why = reasonOf(reason, 'why it no longer holds');
    await this.unitOfWork.run(async (manager) => {
      const id = idOfRule(read.value);
      const rows = manager.getRepository(RuleRow);
      const before = await rows.findOneBy({ kind: 'examination', id });
      if (!before) throw new NotFoundError('This examination rule');
      await rows.delete({ kind: 'examination', id });
      const at = this.clock.now();
      const change = { field: '', was: before.data, wanted: undefined };
      await keepEditions(manager, who, at, why, [{ kind: 'examination rule', subject: id, changes: [change] }]);
      await recordEvents(manager, who, at, [
        { what: 'removed', sentence: `Took out the examination rule ${wordsOf(read.value)}: ${why}.` },
      ]);
      return { ok: true, value: undefined };
    });
  }
}

function ruleOf(field: string, input: unknown): ExaminationRule {
  const read = readInput(examinationRule, input);
  if (!read.ok) throw new BadInputError(read.error.map((each) => ({ ...each, field: `${field}.${each.field}` })));
  return read.value;
}

function reasonOf(reason: string, wanted: string): string {
  const why = reason.trim().replace(/\.$/, '');
  if (why === '' || why.length > 300)
    throw new BadInputError([
      { field: 'reason', value: reason.slice(0, 80), wanted: `${wanted}, in 1 to 300 characters: it is kept with the edition` },
    ]);
  return why;
}

const wordsOf = ({ jurisdiction, kinds, intervals, source }: ExaminationRule): string =>
  `of ${jurisdiction} for ${kinds.join(', ')}: ${intervals.join(', ')}, after ${source}`;
