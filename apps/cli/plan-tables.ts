import { pointRows } from '#drawings';
import { writeCsv } from '#kernel';
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
      ['item', 'model', 'size', 'fitted', 'with_box', 'with_cart', 'loose', 'spares', 'level_reached', 'on_hand', 'missing', 'trunks'],
      ...plan.hardware.lines.map((line) => [
        line.item,
        line.model,
        line.size,
        line.fitted,
        line.withBox,
        line.withCart,
        line.loose,
        line.spares,
        line.levelReached,
        line.onHand,
        line.missing,
        line.trunks.join(' '),
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
