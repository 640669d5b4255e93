import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import { judgeItem } from '#inspection-calendar';
import { type Item, type TourFile, itemKinds, itemStates } from '#tour-file';
import { CLOCK, type Clock, today } from '../../platform/config.js';
import { EventRow } from '../../platform/event-log.js';
import { BadInputError, NotFoundError } from '../../platform/graphql/fault.js';
import { pageSize, readCursor, writeCursor } from '../../platform/graphql/paging.js';
import { KitReader } from './kit.reader.js';
import type { CatalogueModel, HistoryEvent, ItemConnection, ItemPage, ItemPromise, ItemSummary } from './register.types.js';
import { ExaminationRow, ItemRow, ModelRow, RuleRow } from './rows.js';

export interface ItemFilter {
  readonly search?: string | null;
  readonly kind?: string | null;
  readonly state?: string | null;
  readonly model?: string | null;
  readonly first?: number | null;
  readonly after?: string | null;
}

/** Read models of the register's screens. */
@Injectable()
export class RegisterQueries {
  constructor(
    private readonly dataSource: DataSource,
    private readonly kit: KitReader,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async items(filter: ItemFilter): Promise<ItemConnection> {
    const size = pageSize(filter.first);
    known('kind', filter.kind, itemKinds);
    known('state', filter.state, itemStates);
    const query = this.dataSource.getRepository(ItemRow).createQueryBuilder('item');
    if (filter.kind) query.andWhere('item.kind = :kind', { kind: filter.kind });
    if (filter.state) query.andWhere('item.state = :state', { state: filter.state });
    if (filter.model) query.andWhere('item.model = :model', { model: filter.model });
    if (filter.search?.trim())
      query.andWhere(`(item.id || ' ' || item.model || ' ' || item.depot || ' ' || item.rest::text) ILIKE :like`, {
        like: `%${filter.search.trim().replaceAll(/[\\%_]/g, '\\$&')}%`,
      });
    const totalCount = await query.getCount();
    const after = readCursor(filter.after);
    if (after !== undefined) query.andWhere('item.id > :after', { after });
    const rows = await query
      .orderBy('item.id')
      .take(size + 1)
      .getMany();
    const page = rows.slice(0, size);
    const items = await this.kit.items(
      this.dataSource.manager,
      page.map((row) => row.id),
    );
    const byId = new Map(items.map((item) => [item.id, item]));
    const summarise = await this.summariser();
    const carts = new Map(page.map((row) => [row.id, row]));
    const edges = page.map((row) => ({ cursor: writeCursor(row.id), node: summarise(byId.get(row.id)!, carts.get(row.id)!) }));
    return { edges, totalCount, pageInfo: { hasNextPage: rows.length > size, endCursor: edges.at(-1)?.cursor ?? null } };
  }

  async item(id: string): Promise<ItemPage> {
    const row = await this.dataSource.getRepository(ItemRow).findOneBy({ id });
    const item = row && (await this.kit.item(this.dataSource.manager, id));
    if (!row || !item) throw new NotFoundError(`The item ${id}`);
    const history = await this.dataSource.getRepository(EventRow).find({ where: { itemId: id }, order: { id: 'DESC' }, take: 200 });
    const promises: ItemPromise[] = await this.dataSource.query(
      `SELECT tour_name AS tour, lower(period)::text AS "from", (upper(period) - 1)::text AS "to", count FROM booking WHERE item_id = $1 ORDER BY lower(period)`,
      [id],
    );
    const records = await this.dataSource.getRepository(ExaminationRow).find({ where: { itemId: id }, order: { id: 'DESC' } });
    return {
      item,
      records: records.map((each) => ({
        id: each.id,
        examination: each.data,
        recordedBy: each.recordedBy,
        recordedAt: each.recordedAt.toISOString(),
        supersededBy: records.find((other) => other.supersedes === each.id)?.id ?? null,
      })),
      summary: (await this.summariser())(item, row),
      history: history.map(
        (each): HistoryEvent => ({ at: each.at.toISOString(), who: each.who, what: each.what, sentence: each.sentence }),
      ),
      promises,
    };
  }

  /** Every item that some rule wants examined, retired ones left out. */
  async examined(): Promise<ItemSummary[]> {
    const rows = await this.dataSource.getRepository(ItemRow).find({ order: { id: 'ASC' } });
    const items = new Map((await this.kit.items(this.dataSource.manager)).map((item) => [item.id, item]));
    const summarise = await this.summariser();
    const rank = (each: ItemSummary) => `${each.dueState === 'in date' && each.state === 'in service' ? 1 : 0}${each.dueOn ?? ''}`;
    return rows
      .filter((row) => row.state !== 'retired')
      .map((row) => summarise(items.get(row.id)!, row))
      .filter((each) => each.dueState !== null)
      .sort((a, b) => (rank(a) < rank(b) ? -1 : rank(a) > rank(b) ? 1 : 0));
  }

  async models(kind?: string | null): Promise<CatalogueModel[]> {
    const rows = await this.dataSource.getRepository(ModelRow).find({ where: kind ? { kind } : {}, order: { kind: 'ASC', place: 'ASC' } });
    const counts: { model: string; count: string }[] = await this.dataSource.query(
      `SELECT model, count(*)::text AS count FROM item GROUP BY model`,
    );
    const countOf = new Map(counts.map((each) => [each.model, Number(each.count)]));
    return rows.map(({ kind: each, model, data }) => ({ kind: each, model, data, itemCount: countOf.get(model) ?? 0 }));
  }

  async rules(kind: RuleRow['kind']): Promise<object[]> {
    return (await this.dataSource.getRepository(RuleRow).find({ where: { kind }, order: { place: 'ASC' } })).map((each) => each.data);
  }

  /** Judges dates by the strictest rules of all countries on file, as of today. */
  private async summariser(): Promise<(item: Item, row: ItemRow) => ItemSummary> {
    const rules = (await this.rules('examination')) as TourFile['examinationRules'];
    const day = today(this.clock);
    return (item, row) => {
      const intervals = item.intervals ?? [
        ...new Set(rules.filter((rule) => rule.kinds.includes(item.kind)).flatMap((rule) => rule.intervals)),
      ];
      const judged =
        intervals.length > 0
          ? judgeItem(
              { id: item.id, intervals: [...intervals], examinations: item.examinations, events: item.events, declaredOn: item.declaredOn },
              { from: day, to: day },
            )
          : null;
      return {
        id: item.id,
        kind: item.kind,
        model: item.model,
        state: item.state,
        depot: item.depot,
        count: item.count ?? null,
        place: placeOf(item, row),
        dueOn: judged?.dueOn ?? null,
        dueState: judged === null ? null : judged.state === 'in date throughout' || judged.state === 'falls due' ? 'in date' : judged.state,
      };
    };
  }
}

function known(field: string, value: string | null | undefined, among: readonly string[]): void {
  if (value && !among.includes(value))
    throw new BadInputError([{ field, value: value.slice(0, 80), wanted: `one of: ${among.join(', ')}` }]);
}

function placeOf(item: Pick<Item, 'kind' | 'depot' | 'in'>, row: Pick<ItemRow, 'stackCart' | 'stackSlot'>): string {
  if (row.stackCart !== null) return `${row.stackCart}, slot ${row.stackSlot}`;
  if (item.in !== undefined) return `in ${item.in}`;
  return item.kind === 'box' ? `${item.depot}, on the floor` : item.depot;
}
