import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { ok, refuse, writeCsv } from '#kernel';
import { type DecidedRow, decideListed } from '#records';
import { type CsvFault, type ListedRow, examinationCells, examinationColumns, examinationExamples, readExaminationsCsv } from '#tour-file';
import { type Words, tell } from '#words';
import { CLOCK, type Clock, today } from '../../../platform/config/config.js';
import { WORDS } from '../../../platform/config/words.js';
import { UnitOfWork } from '../../../platform/database/unit-of-work.js';
import { recordEvents } from '../../../platform/event-log.js';
import type { SignedIn } from '../../../platform/sign-in/person.js';
import { handOf, propose, proposedRecord, waitingFact } from '../../edition/edition.writer.js';
import { ExaminationWriter } from '../../register/examination.writer.js';
import { workOutDates } from '../../register/item-dates.writer.js';
import { countingRecords, loadListed } from '../../register/records/listed-items.reader.js';
import { readCsvFile } from '../csv-file.js';
import { type CsvImport, byRow, nothingImported } from '../csv-import.js';
import { type ImportWatch, inSlices, unwatched } from '../import-watch.js';

/** Records that leave in one piece of a file. */
const recordsAtOnce = 5_000;

/** The rows of a list by what becomes of them. */
interface DecidedList {
  readonly faults: readonly CsvFault[];
  readonly counts: readonly ListedRow[];
  readonly waits: readonly ListedRow[];
  readonly already: number;
}

/** Examiners' lists in and out as CSV: one row an examination, all rows or none. What failed counts at once, what passed goes the way of two pairs of eyes. */
@Injectable()
export class ExaminationCsvService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly dataSource: DataSource,
    private readonly writer: ExaminationWriter,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(WORDS) private readonly words: Words,
  ) {}

  example(): string {
    return writeCsv([headings(), ...examinationExamples.map(examinationCells)]);
  }

  /** Every record that counts, piece by piece. */
  async *export(): AsyncGenerator<string> {
    yield writeCsv([headings()]);
    for (let after = '0', isMore = true; isMore; ) {
      const records = await countingRecords(this.dataSource.manager, after, recordsAtOnce);
      if (records.length > 0)
        yield writeCsv(
          records.map(({ item, count, data }) =>
            examinationCells({ serial: item, ...(count === null ? {} : { pieces: count }), examination: data }),
          ),
        );
      after = records.at(-1)?.id ?? after;
      isMore = records.length === recordsAtOnce;
    }
  }

  /** A dry run says the same and saves nothing. */
  async import(bytes: Buffer, dryRun: boolean, who: SignedIn, watch = unwatched): Promise<CsvImport> {
    watch.tell({ step: 'reading' });
    const records = readCsvFile(bytes, watch.mostRows);
    if (!Array.isArray(records)) return nothingImported(0, [records]);
    watch.tell({ total: records.length - 1 });
    const { rows, faults } = readExaminationsCsv(records);
    if (rows.length === 0 && faults.length > 0) return nothingImported(records.length - 1, faults);
    const serials = [...new Set(rows.map((each) => each.serial))];
    const outcome = await this.unitOfWork.run<CsvImport, CsvImport>(async (manager) => {
      await watch.begun(manager, serials);
      const decided = await this.decide(manager, rows, who, watch);
      const answer = this.answerOf(rows, decided);
      // Where rows cannot be read the others are decided of all the same: all that is wrong is told at once.
      if (faults.length > 0) return refuse(nothingImported(records.length - 1, byRow([...faults, ...answer.faults])));
      if (answer.faults.length > 0 || dryRun) return refuse(answer);
      await this.save(manager, decided, who, watch);
      watch.tell({ step: 'dates', written: rows.length });
      await workOutDates(manager, today(this.clock), {
        only: serials,
        tell: (items) => watch.tell({ dated: Math.floor((rows.length * items) / serials.length) }),
      });
      await watch.saved(manager, answer);
      return ok(answer);
    }, watch.isolation);
    return outcome.ok ? outcome.value : outcome.error;
  }

  private async decide(manager: EntityManager, rows: readonly ListedRow[], who: SignedIn, watch: ImportWatch): Promise<DecidedList> {
    watch.tell({ step: 'checking', checked: 0, written: 0, dated: 0 });
    const judging = await this.writer.judging(manager);
    const decideRow = decideListed(rows, { ...judging, isOfficer: handOf(who) === 'officer' });
    const decided: { row: ListedRow; is: DecidedRow }[] = [];
    for (const some of inSlices(rows)) {
      const items = await loadListed(manager, [...new Set(some.map((each) => each.serial))], judging.rules);
      for (const row of some) decided.push({ row, is: decideRow(row, items.get(row.serial)) });
      watch.tell({ checked: decided.length });
    }
    const of = (wanted: DecidedRow['is']) => decided.filter((each) => each.is.is === wanted).map((each) => each.row);
    return {
      faults: decided.flatMap(({ is }) => (is.is === 'faulty' ? is.faults : [])),
      ...{ counts: of('counts'), waits: of('waits'), already: of('already').length },
    };
  }

  private answerOf(rows: readonly ListedRow[], { faults, counts, waits, already }: DecidedList): CsvImport {
    return {
      ...{ rows: rows.length, changed: [], unchanged: already, faults },
      added: [...counts, ...waits].sort((a, b) => a.row - b.row).map(nameOf),
      failed: counts.filter((each) => each.examination.outcome === 'fail').map(nameOf),
      waits: waits.map(({ serial, examination }) => ({
        id: serial,
        sentence: tell(this.words.waiting, waitingFact(proposedRecord(serial, examination))),
      })),
    };
  }

  private async save(manager: EntityManager, { counts, waits, already }: DecidedList, who: SignedIn, watch: ImportWatch): Promise<void> {
    const at = this.clock.now();
    let written = already;
    const wrote = (rows: readonly unknown[]) => watch.tell({ step: 'writing', written: (written += rows.length) });
    for (const some of inSlices(counts)) {
      const records = some.map(({ serial, examination }) => ({ item: serial, data: examination, supersedes: null, reason: null }));
      await this.writer.write(manager, records, who);
      wrote(some);
    }
    for (const some of inSlices(waits)) {
      const proposals = some.map(({ serial, examination }) => proposedRecord(serial, examination));
      await propose(manager, who, at, '', proposals);
      const events = proposals.map((each) => ({
        what: 'proposed',
        itemId: each.subject,
        sentence: tell(this.words.waiting, waitingFact(each)),
      }));
      await recordEvents(manager, who, at, events);
      wrote(some);
    }
    const sentence = `Imported an examiner’s list: ${counts.length} counted at once, ${waits.length} wait for the safety officer, ${already} were there already.`;
    await recordEvents(manager, who, at, [{ what: 'imported', sentence }]);
  }
}

const headings = (): string[] => examinationColumns.map((each) => each.heading);

const nameOf = ({ serial, examination: { on, report } }: ListedRow): string =>
  `${serial}, ${on}${report === undefined ? '' : `, ${report}`}`;
