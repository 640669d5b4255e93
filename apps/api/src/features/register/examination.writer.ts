import { Inject, Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { type BadInput, type Result, ok, readInput, refuse } from '#kernel';
import { type Correction, type Judging, type NamedOnFile, recordFaults } from '#records';
import { type Examination, examination as examinationSchema } from '#tour-file';
import type { Words } from '#words';
import { CLOCK, type Clock } from '../../platform/config/config.js';
import { latestDayAtWork } from '../venue/place-days.reader.js';
import { WORDS } from '../../platform/config/words.js';
import { type NewEvent, recordEvents } from '../../platform/event-log.js';
import { BadInputError, NotFoundError } from '../../platform/faults/fault.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { insertExaminations } from './kit.writer.js';
import { type RecordOnFile, loadNamed } from './records/named-on-file.reader.js';
import { rulesInForce } from './records/rules-in-force.reader.js';

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

/** A record that is right, as it comes on file. */
interface JudgedRecord {
  readonly item: string;
  readonly data: Examination;
  readonly supersedes: string | null;
  readonly reason: string | null;
}

/** Faults of one of the records, or that its item is not on file. */
export type RecordRefusal =
  | { readonly index: number; readonly faults: readonly BadInput[] }
  | { readonly index: number; readonly unknown: string };

/** The only way in for records of examinations, one, the lines of a list or a file: loaded once, judged, written once with their events. */
@Injectable()
export class ExaminationWriter {
  constructor(
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(WORDS) private readonly words: Words,
  ) {}

  /** Gives the id of the record. */
  async record(manager: EntityManager, one: ToRecord, who: SignedIn): Promise<string> {
    const outcome = await this.recordAll(manager, [one], who);
    if (outcome.ok) return outcome.value[0] ?? '';
    const [refusal] = outcome.error;
    if (refusal && 'unknown' in refusal) throw new NotFoundError(`The item ${refusal.unknown}`);
    throw new BadInputError(refusal?.faults ?? []);
  }

  /** All of them, or every fault by the place in the list; gives the ids in the order of the list. */
  async recordAll(
    manager: EntityManager,
    records: readonly ToRecord[],
    who: SignedIn,
  ): Promise<Result<readonly string[], readonly RecordRefusal[]>> {
    const onFile = await loadNamed(manager, records);
    const judging = await this.judging(manager);
    const judged = records.map((each, index) =>
      judge(
        each,
        onFile.items.get(each.itemId),
        each.supersedes === null ? null : (onFile.records.get(each.supersedes) ?? 'unknown'),
        index,
        judging,
      ),
    );
    const refused = judged.flatMap((each) => (each.ok ? [] : [each.error]));
    if (refused.length > 0) return refuse(refused);
    return ok(
      await this.write(
        manager,
        judged.flatMap((each) => (each.ok ? [each.value] : [])),
        who,
      ),
    );
  }

  /** What records are judged by now. */
  async judging(manager: EntityManager): Promise<Judging> {
    return { latestDay: await latestDayAtWork(manager, this.clock), rules: await rulesInForce(manager), wanted: this.words.recordWanted };
  }

  /** Puts records on file that are right, each with its event; gives their ids. */
  async write(manager: EntityManager, records: readonly JudgedRecord[], who: SignedIn): Promise<readonly string[]> {
    const at = this.clock.now();
    const ids = await insertExaminations(manager, records, who, at);
    await recordEvents(manager, who, at, records.map(eventOf));
    return ids;
  }
}

function judge(
  { itemId, examination, supersedes, reason }: ToRecord,
  item: NamedOnFile | undefined,
  corrected: RecordOnFile | 'unknown' | null,
  index: number,
  judging: Judging,
): Result<JudgedRecord, RecordRefusal> {
  const read = readInput(examinationSchema, examination);
  if (!read.ok) return refuse({ index, faults: read.error });
  if (!item) return refuse({ index, unknown: itemId });
  if (corrected !== null) {
    const fault = (wanted: string) => refuse({ index, faults: [{ field: 'supersedes', value: supersedes, wanted }] });
    if (corrected === 'unknown' || corrected.item !== itemId) return fault('an examination of this item on file');
    if (corrected.isCorrected) return fault('the newest record; this one has been corrected already');
  }
  const correction: Correction | null = corrected ? { of: corrected.data, reason } : null;
  const faults = recordFaults(read.value, item, correction, judging);
  if (faults.length > 0) return refuse({ index, faults });
  return ok({ item: itemId, data: read.value, supersedes, reason: correction ? reason.trim() : null });
}

function eventOf({ item, data, supersedes, reason }: JudgedRecord): NewEvent {
  const outcome = data.outcome === 'pass' ? 'passed' : 'failed';
  const sentence = `${supersedes === null ? 'Examined' : 'Corrected the record: examined'} on ${data.on} by ${data.examiner ?? 'an examiner not named'}: ${outcome}${data.report ? `, report ${data.report}` : ''}${reason === null ? '' : `; because ${reason}`}.`;
  return { what: 'examined', sentence, itemId: item };
}
