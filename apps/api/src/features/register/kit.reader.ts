import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { Catalogue, Examination, Item, Kit, TourFile } from '#tour-file';
import { ExaminationRow, IncidentRow, ItemRow, ModelRow, RuleRow } from './rows.js';

/** The register in the shape of a tour file: what every plan is made from. */
@Injectable()
export class KitReader {
  async load(manager: EntityManager): Promise<Kit> {
    const models = await manager.getRepository(ModelRow).find({ order: { place: 'ASC' } });
    const rules = await manager.getRepository(RuleRow).find({ order: { place: 'ASC' } });
    const items = await this.items(manager);
    const catalogue: Record<string, object[]> = {
      boxes: [],
      grids: [],
      hoists: [],
      shackles: [],
      slings: [],
      pins: [],
      looms: [],
      carts: [],
      cases: [],
      trucks: [],
    };
    for (const { kind, data } of models) catalogue[kind]?.push(data);
    const ofKind = <T>(kind: string) => rules.filter((each) => each.kind === kind).map((each) => each.data as T);
    return {
      catalogue: catalogue as unknown as Catalogue,
      systems: ofKind<TourFile['systems'][number]>('system'),
      examinationRules: ofKind<TourFile['examinationRules'][number]>('examination'),
      loadRules: ofKind<TourFile['loadRules'][number]>('load'),
      items,
    };
  }

  /** All items, or those named. */
  async items(manager: EntityManager, ids?: readonly string[]): Promise<Item[]> {
    const rows = await manager.getRepository(ItemRow).find({ order: { place: 'ASC' } });
    const wanted = ids ? new Set(ids) : undefined;
    const examinations = await manager.getRepository(ExaminationRow).find({ order: { id: 'ASC' } });
    const incidents = await manager.getRepository(IncidentRow).find({ order: { id: 'ASC' } });
    const superseded = new Set(examinations.map((each) => each.supersedes).filter((each) => each !== null));
    const examinationsOf = groupBy(
      examinations.filter((each) => !superseded.has(each.id)),
      (each) => each.itemId,
    );
    const incidentsOf = groupBy(incidents, (each) => each.itemId);
    const stacks = groupBy(
      rows.filter((each) => each.stackCart !== null),
      (each) => each.stackCart!,
    );
    return rows
      .filter((row) => !wanted || wanted.has(row.id))
      .map((row) =>
        itemOf(
          row,
          (examinationsOf.get(row.id) ?? []).map((each) => each.data),
          (incidentsOf.get(row.id) ?? []).map(({ onDay, what }) => ({ on: onDay, what })),
          (stacks.get(row.id) ?? []).sort((a, b) => a.stackSlot! - b.stackSlot!).map((each) => each.id),
        ),
      );
  }

  async item(manager: EntityManager, id: string): Promise<Item | undefined> {
    return (await this.items(manager, [id]))[0];
  }
}

function itemOf(row: ItemRow, examinations: Examination[], events: Item['events'], stack: string[]): Item {
  return {
    id: row.id,
    kind: row.kind,
    model: row.model,
    ...(row.count === null ? {} : { count: row.count }),
    state: row.state,
    depot: row.depot,
    ...(row.inItem === null ? {} : { in: row.inItem }),
    ...(row.kind === 'cart' ? { stack } : {}),
    ...row.rest,
    examinations,
    events,
  };
}

/** Columns of the item's own row; the stack of a cart is written on the boxes that stand on it. */
export function itemColumns(item: Item): Pick<ItemRow, 'id' | 'kind' | 'model' | 'state' | 'depot' | 'count' | 'inItem' | 'rest'> {
  const { id, kind, model, state, depot, count, in: inItem, stack: _stack, examinations: _examinations, events: _events, ...rest } = item;
  return { id, kind, model, state, depot, count: count ?? null, inItem: inItem ?? null, rest };
}

function groupBy<T>(values: readonly T[], key: (value: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const value of values) groups.set(key(value), [...(groups.get(key(value)) ?? []), value]);
  return groups;
}
