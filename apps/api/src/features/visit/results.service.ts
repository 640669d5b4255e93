import { Inject, Injectable } from '@nestjs/common';
import type { BadInput } from '#kernel';
import { CLOCK, type Clock } from '../../platform/config/config.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { BadInputError, NotFoundError } from '../../platform/faults/fault.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { ExaminationWriter, type RecordRefusal } from '../register/examination.writer.js';
import { VisitLineRow, VisitRow } from './rows.js';
import type { VisitResultInput } from './visit.types.js';

/** What is the same for all lines of a visit. */
export interface WholeVisit {
  readonly examiner: string;
  /** The report itself, kept for one of the items of the list; it speaks of all of them. */
  readonly reportFile: string | null;
}

const mostLines = 1000;
const mostLetters = 300;

/** Results entered on the list of a visit: each line is a record of its item, by the one way in for records. */
@Injectable()
export class ResultsService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly examinations: ExaminationWriter,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  /** Saves the lines that are sent, all of them or none; the others of the list stay open. Faults are named by line. */
  async enter(visitId: string, { examiner, reportFile }: WholeVisit, lines: readonly VisitResultInput[], who: SignedIn): Promise<void> {
    if (lines.length === 0 || lines.length > mostLines)
      throw new BadInputError([{ field: 'lines', value: lines.length, wanted: `1 to ${mostLines} lines with a result` }]);
    await this.unitOfWork.run(async (manager) => {
      const visit = await manager.getRepository(VisitRow).findOneBy({ id: visitId });
      if (!visit || visit.state === 'cancelled') throw new NotFoundError('This visit');
      const rows = manager.getRepository(VisitLineRow);
      const before = new Set((await rows.findBy({ visitId })).map((each) => each.itemId));
      const reportsOf = [...before, ...(visit.list ?? []).map((each) => each.id), ...lines.map((each) => each.itemId)];
      const faults: BadInput[] = [];
      const given = { on: visit.onDay, examiner: examiner.trim() || undefined, reportFile: reportFile ?? undefined };
      for (const [index, { itemId, remark }] of lines.entries()) {
        const said = remark?.trim() ?? '';
        if (said.length > mostLetters)
          faults.push({ field: `lines[${index}].remark`, value: said.slice(0, 80), wanted: `at most ${mostLetters} characters` });
        if (before.has(itemId))
          faults.push({
            field: `lines[${index}].itemId`,
            value: itemId,
            wanted: 'an item whose result has not been entered; a correction is made on its own page',
          });
        before.add(itemId);
      }
      const outcome = await this.examinations.recordAll(
        manager,
        lines.map((line) => ({ itemId: line.itemId, examination: examinationOf(line, given), supersedes: null, reason: '', reportsOf })),
        who,
      );
      if (!outcome.ok) faults.push(...outcome.error.flatMap(faultsOfLine));
      if (!outcome.ok || faults.length > 0) throw new BadInputError(faults);
      await rows.insert(
        lines.map(({ itemId, remark }, index) => ({
          ...{ visitId, itemId, examinationId: outcome.value[index] ?? '', remark: remark?.trim() || null },
        })),
      );
      await recordEvents(manager, who, this.clock.now(), [
        {
          what: 'visits',
          sentence: `Entered ${lines.length} ${lines.length === 1 ? 'result' : 'results'} of the visit of ${visit.onDay}.`,
        },
      ]);
      return { ok: true, value: undefined };
    });
  }
}

/** The record of a line: what it says, and what is the same for all of them. */
const examinationOf = ({ outcome, report, nextLatestOn, defectBy }: VisitResultInput, given: Readonly<Record<string, unknown>>): object =>
  Object.fromEntries(
    Object.entries({
      ...given,
      ...{ outcome, report: report?.trim() || undefined },
      ...{ nextLatestOn: nextLatestOn || undefined, defectBy: defectBy || undefined },
    }).filter(([, value]) => value !== undefined),
  );

const faultsOfLine = (refusal: RecordRefusal): BadInput[] =>
  'unknown' in refusal
    ? [{ field: `lines[${refusal.index}].itemId`, value: refusal.unknown.slice(0, 80), wanted: 'an item on file' }]
    : refusal.faults.map((each) => ({ ...each, field: `lines[${refusal.index}].${each.field}` }));
