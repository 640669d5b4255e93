import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { type SeenItem, dueAfterExamination, getPeriod } from '#inspection-calendar';
import { CLOCK, type Clock, today } from '../../platform/config/config.js';
import { NotFoundError } from '../../platform/faults/fault.js';
import { type SummaryRow, summaryColumns, summaryOf } from '../register/item-summary.reader.js';
import type { VisitItem, VisitLine, VisitList, VisitView } from './visit.types.js';

const show = `(SELECT each->>'name' FROM jsonb_array_elements(tour.data->'shows') each WHERE each->>'id' = visit.show_id)`;
const venue = `(SELECT each->>'venue' FROM jsonb_array_elements(tour.data->'shows') each WHERE each->>'id' = visit.show_id)`;

/** A visit as it is told; the place by the names of now. */
const visitColumns = `visit.id, visit.on_day::text AS "onDay", visit.depot, visit.tour_id AS "tourId", visit.show_id AS "showId",
  coalesce(visit.depot, concat_ws(', ', tour.name, coalesce(${show}, visit.show_id), ${venue})) AS "placeName", visit.state, visit.remark, visit.list,
  (SELECT count(*)::int FROM visit_line WHERE visit_id = visit.id) AS entered, visit.version`;

const inSeason = `SELECT ${visitColumns} FROM visit LEFT JOIN tour ON tour.id = visit.tour_id
WHERE on_day BETWEEN $1::date AND $2::date AND ($3::text IS NULL OR visit.depot IS NULL OR visit.depot = $3) ORDER BY on_day, visit.depot NULLS LAST, visit.id LIMIT 1000`;

const one = `SELECT ${visitColumns} FROM visit LEFT JOIN tour ON tour.id = visit.tour_id WHERE visit.id = $1`;

const ofList = `SELECT ${summaryColumns}, item.rest->'intervals' AS intervals FROM item WHERE item.id = ANY($1) ORDER BY item.kind, item.model, item.id`;

const entered = `SELECT visit_line.item_id AS "itemId", examination_id::text AS "examinationId", data->>'outcome' AS outcome, data->>'report' AS report, remark
FROM visit_line JOIN examination ON examination.id = visit_line.examination_id WHERE visit_id = $1 ORDER BY visit_line.item_id`;

const rulesOnFile = `SELECT data->'kinds' AS kinds, data->'intervals' AS intervals, data->>'check' AS check, data->>'jurisdiction' AS jurisdiction, CASE WHEN data->>'status' <> 'from memory' THEN data->>'source' END AS source
FROM rule WHERE kind = 'examination' AND is_accepted ORDER BY place`;

const shows = `SELECT tour.id AS "tourId", each->>'id' AS "showId", concat_ws(', ', tour.name, each->>'name', each->>'venue') AS name, each->>'from' AS "from", each->>'to' AS "to"
FROM tour, jsonb_array_elements(data->'shows') each WHERE removed_at IS NULL AND prep_from <= $2::date AND return_to >= $1::date AND (each->>'from')::date <= $2::date AND (each->>'to')::date >= $1::date ORDER BY each->>'from', tour.id LIMIT 1000`;

interface Rule {
  readonly kinds: readonly string[];
  readonly intervals: readonly string[];
  readonly check: string | null;
  readonly jurisdiction: string;
  readonly source: string | null;
}

export interface ShowInSeason {
  readonly tourId: string;
  readonly showId: string;
  readonly name: string;
  readonly from: string;
  readonly to: string;
}

/** Visits and their work lists. */
@Injectable()
export class VisitQuery {
  constructor(
    private readonly dataSource: DataSource,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  inSeason(from: string, to: string, depot: string | null): Promise<VisitView[]> {
    return this.dataSource.query(inSeason, [from, to, depot]);
  }

  /** Shows at which an examiner could come. */
  shows(from: string, to: string): Promise<ShowInSeason[]> {
    return this.dataSource.query(shows, [from, to]);
  }

  async list(id: string): Promise<VisitList> {
    const [visit]: VisitView[] = await this.dataSource.query(one, [id]);
    if (!visit) throw new NotFoundError('This visit');
    const lines: VisitLine[] = await this.dataSource.query(entered, [id]);
    const ids = [...new Set([...(visit.list ?? []).map((each) => each.id), ...lines.map((each) => each.itemId)])];
    const rows: (SummaryRow & { intervals: string[] | null })[] = await this.dataSource.query(ofList, [ids]);
    const rules: Rule[] = await this.dataSource.query(rulesOnFile);
    const day = today(this.clock);
    const items = rows.map((row): VisitItem => {
      const { kind, model, place } = summaryOf(row, day);
      const own = rules.filter((rule) => rule.kinds.includes(kind) && rule.check === null);
      return {
        ...{ id: row.id, kind, model, place },
        intervals: row.intervals ?? [...new Set(own.flatMap((rule) => rule.intervals))],
        rules: row.intervals ? [] : own.map((rule) => [rule.jurisdiction, rule.source].filter(Boolean).join(': ')),
      };
    });
    return { visit: { ...visit, list: visit.list?.map((seen) => carriedFrom(visit.onDay, seen, items)) ?? null }, items, lines };
  }
}

/** What a pass carries to follows the day on which the visit is now, not the day that was agreed; an item that has left the register stays as agreed. */
function carriedFrom(onDay: string, seen: SeenItem, items: readonly VisitItem[]): SeenItem {
  const item = items.find((each) => each.id === seen.id);
  return { ...seen, carriesTo: dueAfterExamination(onDay, (item?.intervals ?? []).map(getPeriod)) ?? seen.carriesTo };
}
