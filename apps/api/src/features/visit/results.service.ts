import { Inject, Injectable } from '@nestjs/common';
import type { BadInput } from '#kernel';
import { CLOCK, type Clock } from '../../platform/config/config.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { BadInputError, NotFoundError } from '../../platform/faults/fault.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { ExaminationWriter } from '../register/examination.writer.js';
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
      for (const [index, { itemId, outcome, report, remark, nextLatestOn, defectBy }] of lines.entries()) {
        const at = `lines[${index}]`;
        const said = remark?.trim() ?? '';
        if (said.length > mostLetters)
          faults.push({ field: `${at}.remark`, value: said.slice(0, 80), wanted: `at most ${mostLetters} characters` });
        if (before.has(itemId)) {
          faults.push({
            field: `${at}.itemId`,
            value: itemId,
            wanted: 'an item whose result has not been entered; a correction is made on its own page',
          });
          continue;
        }
        before.add(itemId);
        const given = {
          on: visit.onDay,
          outcome,
          examiner: examiner.trim() || undefined,
          report: report?.trim() || undefined,
          reportFile: reportFile ?? undefined,
        };
        const days = { nextLatestOn: nextLatestOn || undefined, defectBy: defectBy || undefined };
        try {
          const examination = withoutNothing({ ...given, ...days });
          const examinationId = await this.examinations.record(
            manager,
            { itemId, examination, supersedes: null, reason: '', reportsOf },
            who,
          );
          await rows.insert({ visitId, itemId, examinationId, remark: said || null });
        } catch (fault) {
          if (fault instanceof NotFoundError) faults.push({ field: `${at}.itemId`, value: itemId.slice(0, 80), wanted: 'an item on file' });
          else if (fault instanceof BadInputError) faults.push(...fault.faults.map((each) => ({ ...each, field: `${at}.${each.field}` })));
          else throw fault;
        }
      }
      if (faults.length > 0) throw new BadInputError(faults);
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

const withoutNothing = (given: Readonly<Record<string, unknown>>): object =>
  Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined));
