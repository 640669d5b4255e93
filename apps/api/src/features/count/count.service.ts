import { Inject, Injectable } from '@nestjs/common';
import { DataSource, type EntityManager } from 'typeorm';
import { type ReturnCount, lossesOf } from '#hardware-count';
import type { BadInput } from '#kernel';
import { fittedInShow, sparesOfDesign } from '#pack-plan';
import type { TourFile } from '#tour-file';
import { CLOCK, type Clock } from '../../platform/config/config.js';
import { UnitOfWork } from '../../platform/database/unit-of-work.js';
import { recordEvents } from '../../platform/event-log.js';
import { BadInputError, NotFoundError } from '../../platform/faults/fault.js';
import type { SignedIn } from '../../platform/sign-in/person.js';
import { LotWriter } from '../register/lots/lot.writer.js';
import { findFloorItem } from '../register/floor-item.reader.js';
import { TourFileReader } from '../../planning/snapshot/tour-file.reader.js';
import type { CountInput, LotLossInput, CountRefusal, CountSheet, CountView } from './count.types.js';
import { HardwareCountRow } from './rows.js';

const mostPieces = 1_000_000;

/** Hardware counted at return: what was sent, what came back, what came back unfit. Records are never changed; a correction is a record of its own. */
@Injectable()
export class CountService {
  constructor(
    private readonly unitOfWork: UnitOfWork,
    private readonly dataSource: DataSource,
    private readonly reader: TourFileReader,
    private readonly lots: LotWriter,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async sheet(tourId: string, showId: string): Promise<CountSheet> {
    const { manager } = this.dataSource;
    const file = await this.design(manager, tourId);
    const show = showOf(file, showId);
    const records = viewsOf(await rowsOf(manager, tourId));
    const inForce = records.filter((each) => each.inForce && each.uses > 0);
    const spares = new Map(sparesOfDesign(file, showId).lines.map((line) => [line.key, line]));
    const shows = file.tour.shows;
    return {
      tourId,
      showId,
      name: show.name,
      tourName: file.tour.name,
      notCountedBefore: shows
        .slice(0, shows.indexOf(show))
        .filter(({ id }) => !inForce.some((each) => each.shows.includes(id)))
        .map(({ id, name }) => ({ showId: id, name })),
      lines: linesOf(file, showId).map(({ key, item, fitted }) => {
        const { spares: wanted = 0, learned = null } = spares.get(key) ?? {};
        return {
          key,
          item,
          fitted,
          spares: wanted,
          learned: learned && {
            priorMean: learned.priorMean,
            losses: learned.counted.losses,
            uses: learned.counted.uses,
            posteriorMean: learned.posteriorMean,
            sparesByPriorAlone: learned.sparesByPriorAlone,
          },
          counted: inForce.find((each) => each.key === key && each.shows.includes(showId)) ?? null,
        };
      }),
      records,
    };
  }

  /** Counts of several lines over one or more shows, all or none; refused where one of them has been counted for one of the shows. */
  async record(
    tourId: string,
    showIds: readonly string[],
    lines: readonly CountInput[],
    who: SignedIn,
  ): Promise<{ ok: true; value: void } | { ok: false; error: CountRefusal }> {
    return this.unitOfWork.run<void, CountRefusal>(async (manager) => {
      const file = await this.design(manager, tourId);
      const uses = usesOf(file, showIds);
      const faults = [...showFaults(file, showIds), ...lineFaults(lines, uses)];
      if (faults.length > 0) throw new BadInputError(faults);
      const already = viewsOf(await rowsOf(manager, tourId)).filter(
        (each) =>
          each.inForce && each.uses > 0 && lines.some((line) => line.key === each.key) && each.shows.some((show) => showIds.includes(show)),
      );
      if (already.length > 0) {
        const first = already[0]!;
        const sentence = `${first.key} has been counted for ${first.shows.join(', ')} by ${first.countedBy} on ${first.countedAt.slice(0, 10)}. Nothing was recorded; correct that count instead.`;
        return { ok: false, error: { sentence, already } };
      }
      const at = { countedBy: who.name, countedById: who.id, countedAt: this.clock.now(), corrects: null, reason: null };
      await manager
        .getRepository(HardwareCountRow)
        .insert(lines.map(({ lots: _lots, ...line }) => ({ ...line, tourId, shows: [...showIds], uses: uses.get(line.key)!, ...at })));
      for (const { key, lots } of lines) for (const lot of lots ?? []) await this.correctLot(manager, key, lot, showIds, who);
      const gone = lines.filter((line) => lossesOf(line) > 0).map((line) => `${lossesOf(line)} of ${line.key}`);
      await recordEvents(manager, who, at.countedAt, [
        {
          what: 'counted',
          tourId,
          sentence: `Counted ${lines.length} ${lines.length === 1 ? 'line' : 'lines'} at return of ${showIds.join(', ')}: ${gone.length > 0 ? `gone or unfit ${gone.join(', ')}` : 'nothing gone'}.`,
        },
      ]);
      return { ok: true, value: undefined };
    });
  }

  /** Takes out of a batch what is gone and what is unfit. */
  private async correctLot(
    manager: EntityManager,
    key: string,
    { lot, lost, unfit }: LotLossInput,
    showIds: readonly string[],
    who: SignedIn,
  ): Promise<void> {
    const item = await findFloorItem(manager, lot);
    if (!item || item.count === null || item.model !== key)
      throw new BadInputError([{ field: 'lines.lots.lot', value: lot.slice(0, 80), wanted: `a batch of ${key} on file` }]);
    const from = `at return of ${showIds.join(', ')}`;
    const asked = { itemId: lot, examination: null };
    if (lost > 0) await this.lots.takeOut(manager, { ...asked, pieces: lost, state: 'retired', reason: `lost, counted ${from}` }, who);
    if (unfit > 0)
      await this.lots.takeOut(manager, { ...asked, pieces: unfit, state: 'quarantined', reason: `unfit, counted ${from}` }, who);
  }

  /** A tour as it is designed. Of the register only the carts' usual model counts for what is fitted: one of them stands for all. */
  private async design(manager: EntityManager, tourId: string): Promise<TourFile> {
    const usual: { id: string }[] = await manager.query(
      `SELECT min(id) AS id FROM item WHERE kind = 'cart' GROUP BY model ORDER BY count(*) DESC, model COLLATE "C" LIMIT 1`,
    );
    return this.reader.design(
      manager,
      tourId,
      usual.map((each) => each.id),
    );
  }

  /** A record in the place of another; null takes the count back. Gives the tour and the last show that it covers. */
  async correct(id: string, count: ReturnCount | null, reason: string, who: SignedIn): Promise<{ tourId: string; showId: string }> {
    const outcome = await this.unitOfWork.run<{ tourId: string; showId: string }>(async (manager) => {
      const rows = manager.getRepository(HardwareCountRow);
      const before = /^\d{1,18}$/.test(id) ? await rows.findOneBy({ id }) : null;
      if (!before) throw new NotFoundError(`The count ${id.slice(0, 40)}`);
      const later = await rows.findOneBy({ corrects: id });
      const faults: BadInput[] = [];
      if (later) faults.push({ field: 'id', value: id, wanted: `a count in force; ${later.countedBy} corrected this one by ${later.id}` });
      if (before.uses === 0) faults.push({ field: 'id', value: id, wanted: 'a count in force; this one was taken back. Count anew' });
      const why = reason.trim();
      if (why === '' || why.length > 300)
        faults.push({ field: 'reason', value: reason.slice(0, 80), wanted: 'why, in 1 to 300 characters' });
      if (count) faults.push(...numberFaults('', count));
      if (faults.length > 0) throw new BadInputError(faults);
      const { tourId, shows, key } = before;
      const at = this.clock.now();
      const numbers = count ?? { sent: 0, returned: 0, damaged: 0 };
      await rows.insert({
        tourId,
        shows,
        key,
        ...numbers,
        uses: count ? before.uses : 0,
        corrects: id,
        reason: why,
        countedBy: who.name,
        countedById: who.id,
        countedAt: at,
      });
      const what = count ? `${count.sent} sent, ${count.returned} returned, ${count.damaged} of them unfit` : 'taken back';
      await recordEvents(manager, who, at, [
        { what: 'count corrected', tourId, sentence: `Count of ${key} for ${shows.join(', ')}: ${what}. ${why}` },
      ]);
      return { ok: true, value: { tourId, showId: shows.at(-1)! } };
    });
    if (!outcome.ok) throw new Error('a correction is never refused');
    return outcome.value;
  }
}

const rowsOf = (manager: EntityManager, tourId: string): Promise<HardwareCountRow[]> =>
  manager.getRepository(HardwareCountRow).find({ where: { tourId }, order: { id: 'DESC' } });

function viewsOf(rows: readonly HardwareCountRow[]): CountView[] {
  const corrected = new Set(rows.map((row) => row.corrects));
  return rows.map(({ tourId: _tour, countedAt, ...row }) => ({
    ...row,
    losses: lossesOf(row),
    countedAt: countedAt.toISOString(),
    inForce: !corrected.has(row.id),
  }));
}

function showOf(file: TourFile, showId: string): TourFile['tour']['shows'][number] {
  const show = file.tour.shows.find((each) => each.id === showId);
  if (!show) throw new NotFoundError(`The show ${showId.slice(0, 80)}`);
  return show;
}

function linesOf(file: TourFile, showId: string): { key: string; item: string; fitted: number }[] {
  const lines = new Map<string, { key: string; item: string; fitted: number }>();
  for (const { key, item, count } of fittedInShow(file, showId))
    lines.set(key, { key, item: lines.get(key)?.item ?? item, fitted: (lines.get(key)?.fitted ?? 0) + count });
  return [...lines.values()];
}

/** Piece-uses by line: what each of the shows fits. */
function usesOf(file: TourFile, showIds: readonly string[]): Map<string, number> {
  const uses = new Map<string, number>();
  for (const id of file.tour.shows.map((show) => show.id).filter((each) => showIds.includes(each)))
    for (const { key, fitted } of linesOf(file, id)) uses.set(key, (uses.get(key) ?? 0) + fitted);
  return uses;
}

function showFaults(file: TourFile, showIds: readonly string[]): BadInput[] {
  const known = file.tour.shows.map((show) => show.id);
  if (showIds.length === 0) return [{ field: 'showIds', value: 'a list of 0', wanted: 'at least one show' }];
  return showIds.flatMap((id, index): BadInput[] => {
    if (!known.includes(id))
      return [{ field: `showIds[${index}]`, value: id.slice(0, 80), wanted: `a show of this tour: ${known.join(', ')}` }];
    return showIds.indexOf(id) === index ? [] : [{ field: `showIds[${index}]`, value: id, wanted: 'each show once' }];
  });
}

function lineFaults(lines: readonly CountInput[], uses: ReadonlyMap<string, number>): BadInput[] {
  if (lines.length === 0 || lines.length > 500) return [{ field: 'lines', value: `a list of ${lines.length}`, wanted: '1 to 500 lines' }];
  return lines.flatMap((line, index): BadInput[] => {
    const field = `lines[${index}]`;
    if (!uses.has(line.key))
      return [{ field: `${field}.key`, value: line.key.slice(0, 80), wanted: `a line of these shows: ${[...uses.keys()].join('; ')}` }];
    if (lines.findIndex((each) => each.key === line.key) !== index)
      return [{ field: `${field}.key`, value: line.key, wanted: 'each line once' }];
    return [...numberFaults(`${field}.`, line), ...lotFaults(`${field}.`, line)];
  });
}

/** What is said of batches is no more than what is gone or unfit of the line. */
function lotFaults(field: string, { sent, returned, damaged, lots }: CountInput): BadInput[] {
  return (lots ?? []).flatMap(({ lot, lost, unfit }, index): BadInput[] => {
    const sum = (of: 'lost' | 'unfit') => (lots ?? []).reduce((all, each) => all + each[of], 0);
    const at = `${field}lots[${index}].`;
    const faults: BadInput[] = [];
    if ((lots ?? []).findIndex((each) => each.lot === lot) !== index)
      faults.push({ field: `${at}lot`, value: lot, wanted: 'each batch once' });
    if (lost < 0 || sum('lost') > sent - returned)
      faults.push({ field: `${at}lost`, value: lost, wanted: `0 to ${sent - returned} in all: what did not come back` });
    if (unfit < 0 || sum('unfit') > damaged)
      faults.push({ field: `${at}unfit`, value: unfit, wanted: `0 to ${damaged} in all: what is unfit` });
    return faults;
  });
}

function numberFaults(field: string, { sent, returned, damaged }: ReturnCount): BadInput[] {
  const faults: BadInput[] = [];
  if (sent < 1 || sent > mostPieces) faults.push({ field: `${field}sent`, value: sent, wanted: `1 to ${mostPieces} pieces` });
  if (returned < 0 || returned > sent)
    faults.push({ field: `${field}returned`, value: returned, wanted: `0 to ${sent}, what was sent; foreign pieces are no returns` });
  if (damaged < 0 || damaged > returned)
    faults.push({ field: `${field}damaged`, value: damaged, wanted: `0 to ${returned}, what came back` });
  return faults;
}
