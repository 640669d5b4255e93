import { pointRows } from '#drawings';
import { writeCsv } from '#kernel';
import { takenWords } from '#drawings';
import type { PackPlan } from '#pack-plan';

/** The five results and the findings as CSV, by file name. */
export function planTables(plan: PackPlan): Record<string, string> {
  return {
    carts: writeCsv([
      ['load', 'hang', 'cart', 'slot', 'position', 'serial', 'model', 'splay_deg', 'splay_set'],
      ...plan.carts.loads.flatMap((load) =>
        load.boxes.map((box) => [load.id, load.hang, load.cart, box.slot, box.position, box.serial, box.model, box.splayDeg, box.splaySet]),
      ),
    ]),
    moves: writeCsv([
      ['number', 'round', 'box', 'from', 'to', 'why'],
      ...plan.carts.moves.map((move) => [move.number, move.round, move.box, move.from, move.to, move.why]),
    ]),
    picks: writeCsv([
      ['hang', 'hole', 'hoist', 'reaction_n', 'hook_load_kg', 'point_load_n', 'point_load_dynamic_n', 'stage_x_mm', 'stage_y_mm'],
      ...plan.picks.hangs.flatMap((hang) =>
        hang.picks.map((pick) => [
          hang.hang,
          pick.hole,
          pick.hoistSerial,
          pick.reactionN,
          pick.hookLoadKg,
          pick.pointLoadN,
          pick.pointLoadDynamicN,
          pick.stage?.xMm,
          pick.stage?.yMm,
        ]),
      ),
    ]),
    points: writeCsv(pointRows(plan.picks)),
    hardware: writeCsv([
      [
        'item',
        'model',
        'size',
        'fitted',
        'with_box',
        'with_cart',
        'loose',
        'stays_in_box',
        'difference',
        'spares',
        'level_wanted',
        'level_reached',
        'spares_one_stock',
        'spares_by_hang',
        'spares_by_leg',
        'loss_per_use_believed',
        'losses_counted',
        'uses_counted',
        'loss_per_use_now',
        'spares_by_belief_alone',
        'on_hand',
        'kept_at_home',
        'missing',
        'short_from',
        'short_to',
        'taken_from',
      ],
      ...plan.hardware.lines.map((line) => [
        line.item,
        line.model,
        line.size,
        line.fitted,
        line.withBox,
        line.withCart,
        line.loose,
        line.staysInBox,
        line.difference,
        line.spares,
        line.levelWanted,
        line.levelReached,
        line.pooling?.together,
        line.pooling?.byHang,
        line.pooling?.byLeg,
        line.learned?.priorMean,
        line.learned?.counted.losses,
        line.learned?.counted.uses,
        line.learned?.posteriorMean,
        line.learned?.sparesByPriorAlone,
        line.onHand,
        line.keptAtHome,
        line.missing,
        line.shortOn?.from,
        line.shortOn?.to,
        takenWords(line),
      ]),
    ]),
    'hardware-by-cart': writeCsv([
      ['load', 'cart', 'item', 'model', 'count'],
      ...plan.hardware.lines.flatMap((line) => line.carriers.map(({ load, cart, count }) => [load, cart, line.item, line.model, count])),
    ]),
    chains: writeCsv([
      ['hang', 'hole', 'hoist', 'serial', 'chain_on_file_m', 'needed_m', 'point_height_mm', 'in_bag_at_trim_m', 'enough'],
      ...plan.hardware.chains.map((each) => [
        each.hang,
        each.hole,
        each.hoist,
        each.serial,
        each.onFileM,
        each.neededM,
        each.pointHeightMm,
        each.inBagAtTrimM,
        each.enough,
      ]),
    ]),
    truck: writeCsv([
      ['truck', 'row', 'piece', 'label', 'x_mm', 'y_mm', 'z_mm', 'turned', 'mass_kg', 'first_off', 'loading_order'],
      ...plan.truck.trucks.flatMap((truck) =>
        truck.rows.flatMap((row) =>
          row.pieces.map((id) => {
            const at = truck.placements.find((each) => each.id === id)!;
            return [
              truck.id,
              row.number,
              id,
              at.label,
              at.xMm,
              at.yMm,
              at.zMm,
              at.turned,
              at.massKg,
              at.firstOff,
              truck.loadingOrder.indexOf(id) + 1,
            ];
          }),
        ),
      ),
    ]),
    due: writeCsv([
      ['item', 'kind', 'model', 'where', 'last_examined_on', 'due_on', 'state'],
      ...plan.due.items.map((item) => [item.item, item.kind, item.model, item.where, item.lastExaminedOn, item.dueOn, item.state]),
    ]),
    findings: writeCsv([
      ['weight', 'section', 'code', 'subject', 'date', 'sentence'],
      ...plan.findings.map((each) => [each.weight, each.section, each.code, each.subject, each.date, each.sentence]),
    ]),
  };
}
