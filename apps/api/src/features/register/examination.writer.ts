import { Inject, Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { readInput } from '#kernel';
import { type Examination, examination as examinationSchema } from '#tour-file';
import { CLOCK, type Clock, latestDay } from '../../platform/config/config.js';
import { recordEvents } from '../../platform/event-log.js';
import { BadInputError, NotFoundError } from '../../platform/faults/fault.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { examinationFaults, ruleFaults } from './records/examination-faults.js';
import { rulesInForce } from './records/rules-in-force.reader.js';
import { ExaminationRow, IncidentRow, ItemRow, ReportFileRow } from './rows.js';

/** What is recorded: the examination as its sender wrote it, of which item, in whose place, and why. */
export interface ToRecord {
  readonly itemId: string;
  readonly examination: unknown;
  /** The record that this one corrects; both stay on file. */
  readonly supersedes: string | null;
  readonly reason: string;
  /** Other items that the same report speaks of: a file kept for one of them is a file of this one. */
  readonly reportsOf?: readonly string[];
}

/** The only way in for a record of an examination, single or a line of a list: read, judged, written with its event. Gives its id. */
@Injectable()
export class ExaminationWriter {
  constructor(@Inject(CLOCK) private readonly clock: Clock) {}

  async record(
    manager: EntityManager,
    { itemId, examination, supersedes, reason, reportsOf = [] }: ToRecord,
    who: SignedIn,
  ): Promise<string> {
    const read = readInput(examinationSchema, examination);
    if (!read.ok) throw new BadInputError(read.error);
    const data: Examination = read.value;
    const rows = manager.getRepository(ExaminationRow);
    const item = await manager.getRepository(ItemRow).findOne({ select: { kind: true }, where: { id: itemId } });
    if (!item) throw new NotFoundError(`The item ${itemId}`);
    const of = supersedes === null ? null : await this.mayBeCorrected(manager, itemId, supersedes);
    const faults = [
      ...examinationFaults(data, latestDay(this.clock), of && { of, reason }),
      ...ruleFaults(data, item.kind, await rulesInForce(manager)),
    ];
    if (faults.length > 0) throw new BadInputError(faults);
    await this.namesWhatIsOnFile(manager, data, [itemId, ...reportsOf]);
    const made = await rows.insert({
      itemId,
      data,
      recordedBy: who.name,
      recordedById: who.id,
      recordedAt: this.clock.now(),
      supersedes,
      reason: of ? reason.trim() : null,
    });
    const outcome = data.outcome === 'pass' ? 'passed' : 'failed';
    const sentence = `${supersedes === null ? 'Examined' : 'Corrected the record: examined'} on ${data.on} by ${data.examiner ?? 'an examiner not named'}: ${outcome}${data.report ? `, report ${data.report}` : ''}${of ? `; because ${reason.trim()}` : ''}.`;
    await recordEvents(manager, who, this.clock.now(), [{ what: 'examined', sentence, itemId }]);
    return String((made.identifiers[0] as { id: string }).id);
  }

  private async namesWhatIsOnFile(
    manager: EntityManager,
    { reportFile, answers }: Examination,
    [itemId, ...others]: string[],
  ): Promise<void> {
    const files = manager.getRepository(ReportFileRow);
    const isOf = (id: string | undefined): Promise<boolean> => files.existsBy({ id: reportFile, itemId: id });
    if (reportFile !== undefined && !(await isOf(itemId)) && !(await anyOf(others, isOf)))
      throw new BadInputError([{ field: 'reportFile', value: reportFile, wanted: 'a report kept for this item' }]);
    for (const [index, day] of (answers ?? []).entries())
      if (!(await manager.getRepository(IncidentRow).existsBy({ itemId, onDay: day })))
        throw new BadInputError([{ field: `answers[${index}]`, value: day, wanted: 'the day of an incident of this item on file' }]);
  }

  private async mayBeCorrected(manager: EntityManager, itemId: string, id: string): Promise<Examination> {
    const rows = manager.getRepository(ExaminationRow);
    const known = /^\d{1,18}$/.test(id) ? await rows.findOneBy({ id, itemId }) : null;
    if (!known) throw new BadInputError([{ field: 'supersedes', value: id, wanted: 'an examination of this item on file' }]);
    if (await rows.existsBy({ supersedes: id }))
      throw new BadInputError([{ field: 'supersedes', value: id, wanted: 'the newest record; this one has been corrected already' }]);
    return known.data;
  }
}

async function anyOf(ids: readonly string[], isSo: (id: string) => Promise<boolean>): Promise<boolean> {
  for (const id of ids) if (await isSo(id)) return true;
  return false;
}
