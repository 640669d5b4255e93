import { randomUUID } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { type BadInput, daysBetween, isPlainDate } from '#kernel';
import { CLOCK, type Clock, today } from '../../platform/config/config.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { BadInputError, NotFoundError } from '../../platform/faults/fault.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { toldAnswer } from '../../planning/jobs/job-outcome.js';
import { SOLVERS, type Solvers, taskFile } from '../../planning/solve/solver-pool.js';
import { ItemDates } from '../register/item-dates.writer.js';
import { VisitLineRow, VisitRow } from './rows.js';
import type { SeasonSubject } from './season-snapshot.js';
import type { SolvedSeason } from './season.task.js';
import type { PossibleDayInput } from './visit.types.js';

const seasonTask = taskFile(import.meta.url, './season.task.js');
const longestSeasonDays = 800;
const mostDays = 400;

/** Days on which examiners may come, and which of them they are asked to come on. */
@Injectable()
export class VisitService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly dates: ItemDates,
    @Inject(SOLVERS) private readonly solvers: Solvers,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  /** The fewest visits of a season, by what is on file now. */
  async season(subject: SeasonSubject): Promise<SolvedSeason> {
    mustBeSeason(subject.from, subject.to);
    const day = today(this.clock);
    await this.dates.workOut(day);
    return toldAnswer(await this.solvers.look<SolvedSeason>({ file: seasonTask, subject: { ...subject, today: day } }));
  }

  /** Adds days on which an examiner may come; a day and place that stands already is left as it is. Gives how many are new. */
  async addDays(days: readonly PossibleDayInput[], who: SignedIn): Promise<number> {
    if (days.length === 0 || days.length > mostDays)
      throw new BadInputError([{ field: 'days', value: days.length, wanted: `1 to ${mostDays} days` }]);
    const outcome = await this.unitOfWork.run<number>(async (manager) => {
      const faults: BadInput[] = [];
      for (const [index, day] of days.entries()) faults.push(...(await this.dayFaults(manager, day, `days[${index}]`)));
      if (faults.length > 0) throw new BadInputError(faults);
      const rows = manager.getRepository(VisitRow);
      let added = 0;
      for (const { onDay, depot = null, tourId = null, showId = null, remark = null } of days) {
        if (await this.standingAt(manager, { onDay, depot, tourId, showId })) continue;
        added++;
        await rows.insert({
          id: randomUUID(),
          onDay,
          depot,
          tourId,
          showId,
          remark,
          state: 'possible',
          list: null,
          changedAt: this.clock.now(),
        });
      }
      if (added > 0) await this.say(manager, who, `Added ${added} ${added === 1 ? 'day' : 'days'} on which an examiner may come.`);
      return { ok: true, value: added };
    });
    return outcome.ok ? outcome.value : 0;
  }

  /** Takes the visits of a season as its answer chose them: those are agreed, with what is seen there; days agreed before that are not among them are possible again. */
  async agree(subject: SeasonSubject, wanted: readonly string[], who: SignedIn): Promise<number> {
    const { answer } = await this.season({ ...subject, without: [] });
    const chosen = answer.visits.map((each) => each.id).sort();
    if (chosen.join() !== [...wanted].sort().join())
      throw new BadInputError([
        {
          field: 'visits',
          value: wanted.length,
          wanted: 'the visits as they are planned now: what is on file has changed, look at the plan again',
        },
      ]);
    await this.unitOfWork.run(async (manager) => {
      const rows = manager.getRepository(VisitRow);
      const standing = await rows
        .createQueryBuilder('visit')
        .where(`state <> 'cancelled' AND on_day BETWEEN :from AND :to AND on_day >= :day AND (:depot::text IS NULL OR depot = :depot)`, {
          ...{ from: subject.from, to: subject.to, depot: subject.depot, day: today(this.clock) },
        })
        .orWhere('id = ANY(:chosen)', { chosen })
        .getMany();
      for (const row of standing) {
        const list = answer.visits.find((each) => each.id === row.id)?.items ?? null;
        if (list === null && row.state !== 'agreed') continue;
        await rows.update({ id: row.id }, { ...this.after(row), state: list ? 'agreed' : 'possible', list: list });
      }
      await this.say(
        manager,
        who,
        `Agreed ${chosen.length} ${chosen.length === 1 ? 'visit' : 'visits'} of examiners from ${subject.from} to ${subject.to}.`,
      );
      return { ok: true, value: undefined };
    });
    return chosen.length;
  }

  /** Puts a visit on another day; it stays the same visit, with its list. A day has one visit to a place. */
  async move(id: string, onDay: string, expectedVersion: number, who: SignedIn): Promise<void> {
    await this.change(id, expectedVersion, async (manager, row) => {
      const { depot, tourId, showId } = row;
      const faults = await this.dayFaults(manager, { onDay, depot, tourId, showId }, '');
      if (faults.length > 0) throw new BadInputError(faults);
      await mustHaveNoResult(manager, row, 'it keeps that day; what is left is seen on a day of its own');
      const there = await this.standingAt(manager, { onDay, depot, tourId, showId });
      if (there && there.id !== id)
        throw new BadInputError([
          {
            field: 'onDay',
            value: onDay,
            wanted: `a day on which no visit to the same place is listed: on ${onDay} there is one already (${depot ?? 'the same show'}, ${there.state})`,
          },
        ]);
      await manager.getRepository(VisitRow).update({ id }, { ...this.after(row), onDay });
      await this.say(manager, who, `Moved the visit of ${row.onDay} to ${onDay}.`);
    });
  }

  /** Nobody comes: an agreed visit stays on file as cancelled, a day that was only possible goes; refused once a result is entered. */
  async cancel(id: string, expectedVersion: number, who: SignedIn): Promise<void> {
    await this.change(id, expectedVersion, async (manager, row) => {
      await mustHaveNoResult(manager, row, 'the examiner came, and nobody cancels that');
      const rows = manager.getRepository(VisitRow);
      if (row.state === 'possible') await rows.delete({ id });
      else await rows.update({ id }, { ...this.after(row), state: 'cancelled' });
      await this.say(manager, who, `No examiner comes on ${row.onDay}.`);
    });
  }

  private async change(id: string, expectedVersion: number, work: (manager: EntityManager, row: VisitRow) => Promise<void>): Promise<void> {
    await this.unitOfWork.run(async (manager) => {
      const row = await manager.getRepository(VisitRow).findOneBy({ id });
      if (!row || row.state === 'cancelled') throw new NotFoundError('This visit');
      if (row.version !== expectedVersion)
        throw new BadInputError([
          {
            field: 'expectedVersion',
            value: expectedVersion,
            wanted: `${row.version}: somebody else changed this visit meanwhile; look at it again`,
          },
        ]);
      await work(manager, row);
      return { ok: true, value: undefined };
    });
  }

  /** The visit that is listed for a day and a place. */
  private standingAt(manager: EntityManager, { onDay, depot, tourId, showId }: PossibleDayInput): Promise<VisitRow | null> {
    return manager
      .getRepository(VisitRow)
      .createQueryBuilder('visit')
      .where(
        `state <> 'cancelled' AND on_day = :onDay AND depot IS NOT DISTINCT FROM :depot AND show_id IS NOT DISTINCT FROM :showId AND tour_id IS NOT DISTINCT FROM :tourId`,
        { onDay, depot, showId, tourId },
      )
      .getOne();
  }

  private after(row: VisitRow): Pick<VisitRow, 'version' | 'changedAt'> {
    return { version: row.version + 1, changedAt: this.clock.now() };
  }

  /** A day to come, at a depot on file or at a show on its days. */
  private async dayFaults(manager: EntityManager, { onDay, depot, tourId, showId }: PossibleDayInput, at: string): Promise<BadInput[]> {
    const field = (name: string): string => (at === '' ? name : `${at}.${name}`);
    if (!isPlainDate(onDay) || onDay < today(this.clock))
      return [
        {
          field: field('onDay'),
          value: onDay.slice(0, 40),
          wanted: `a day that exists, from today (${today(this.clock)}) on, written YYYY-MM-DD`,
        },
      ];
    if ((depot ?? null) !== null) {
      if (tourId || showId) return [{ field: field('depot'), value: depot, wanted: 'a depot or a show, not both' }];
      const [found]: object[] = await manager.query('SELECT FROM item WHERE depot = $1 LIMIT 1', [depot]);
      return found ? [] : [{ field: field('depot'), value: String(depot).slice(0, 80), wanted: 'a depot of the register' }];
    }
    const [show]: { from: string; to: string }[] = await manager.query(
      `SELECT each->>'from' AS "from", each->>'to' AS "to" FROM tour, jsonb_array_elements(data->'shows') each WHERE tour.id = $1 AND removed_at IS NULL AND each->>'id' = $2`,
      [tourId ?? null, showId ?? null],
    );
    if (!show) return [{ field: field('showId'), value: showId ?? null, wanted: 'a depot, or a show of a tour on file' }];
    return onDay >= show.from && onDay <= show.to
      ? []
      : [{ field: field('onDay'), value: onDay, wanted: `a day of the show, ${show.from} to ${show.to}` }];
  }

  private say(manager: EntityManager, who: SignedIn, sentence: string): Promise<void> {
    return recordEvents(manager, who, this.clock.now(), [{ what: 'visits', sentence }]);
  }
}

/** Throws where a result of the visit is entered: its day is the day of the records. */
async function mustHaveNoResult(manager: EntityManager, { id, onDay }: VisitRow, because: string): Promise<void> {
  const entered = await manager.getRepository(VisitLineRow).countBy({ visitId: id });
  if (entered > 0)
    throw new BadInputError([
      {
        field: 'id',
        value: id,
        wanted: `a visit without results: ${entered} ${entered === 1 ? 'result is' : 'results are'} entered for ${onDay}: ${because}`,
      },
    ]);
}

/** Throws where this is no season. */
export function mustBeSeason(from: string, to: string): void {
  const faults = [
    ...(['from', 'to'] as const).flatMap((field) => {
      const value = field === 'from' ? from : to;
      return isPlainDate(value) ? [] : [{ field, value: value.slice(0, 40), wanted: 'a day that exists, written YYYY-MM-DD' }];
    }),
  ];
  if (faults.length === 0 && (to < from || daysBetween(from, to) > longestSeasonDays))
    faults.push({ field: 'to', value: to, wanted: `a day on or after ${from}, at most ${longestSeasonDays} days later` });
  if (faults.length > 0) throw new BadInputError(faults);
}
