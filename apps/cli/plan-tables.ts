import { pointRows } from '#drawings';
import { writeCsv } from '#kernel';
import { takenWords } from '#drawings';
import type { PackPlan } from '#pack-plan';

type Cell = string | number | boolean | null | undefined;
type Table = readonly (readonly Cell[])[];

/** The five results and the findings as CSV, by file name. */
export function planTables(plan: PackPlan): Record<string, string> {
  return Object.fromEntries(Object.entries(tables).map(([name, table]) => [name, writeCsv(table(plan))]));
}

const tables: Readonly<Record<string, (plan: PackPlan) => Table>> = {
  carts: cartTable,
  moves: moveTable,
  picks: pickTable,
  points: pointTable,
  hardware: ({ hardware }) => [
    hardwareColumns.map(([heading]) => heading),
    ...hardware.lines.map((line) => hardwareColumns.map(([, value]) => value(line))),
  ],
  'hardware-by-cart': carrierTable,
  chains: chainTable,
  truck: truckTable,
  due: dueTable,
  findings: findingTable,
};

function cartTable(plan: PackPlan): Table {
  return [
    ['load', 'hang', 'cart', 'slot', 'position', 'serial', 'model', 'splay_deg', 'splay_set'],
    ...plan.carts.loads.flatMap((load) =>
      load.boxes.map((box) => [load.id, load.hang, load.cart, box.slot, box.position, box.serial, box.model, box.splayDeg, box.splaySet]),
    ),
  ];
}

function moveTable(plan: PackPlan): Table {
  return [
    ['number', 'round', 'box', 'from', 'to', 'why'],
    ...plan.carts.moves.map((move) => [move.number, move.round, move.box, move.from, move.to, move.why]),
  ];
}

function pickTable(plan: PackPlan): Table {
  return [
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
  ];
}

function pointTable(plan: PackPlan): Table {
  return pointRows(plan.picks);
}

type Line = PackPlan['hardware']['lines'][number];

/** Heading and value of each column of the hardware table. */
const hardwareColumns: readonly (readonly [heading: string, value: (line: Line) => Cell])[] = [
  ['item', (line) => line.item],
  ['model', (line) => line.model],
  ['size', (line) => line.size],
  ['fitted', (line) => line.fitted],
  ['with_box', (line) => line.withBox],
  ['with_cart', (line) => line.withCart],
  ['loose', (line) => line.loose],
  ['stays_in_box', (line) => line.staysInBox],
  ['difference', (line) => line.difference],
  ['spares', (line) => line.spares],
  ['level_wanted', (line) => line.levelWanted],
  ['level_reached', (line) => line.levelReached],
  ['spares_one_stock', (line) => line.pooling?.together],
  ['spares_by_hang', (line) => line.pooling?.byHang],
  ['spares_by_leg', (line) => line.pooling?.byLeg],
  ['loss_per_use_believed', (line) => line.learned?.priorMean],
  ['losses_counted', (line) => line.learned?.counted.losses],
  ['uses_counted', (line) => line.learned?.counted.uses],
  ['loss_per_use_now', (line) => line.learned?.posteriorMean],
  ['spares_by_belief_alone', (line) => line.learned?.sparesByPriorAlone],
  ['on_hand', (line) => line.onHand],
  ['kept_at_home', (line) => line.keptAtHome],
  ['missing', (line) => line.missing],
  ['short_from', (line) => line.shortOn?.from],
  ['short_to', (line) => line.shortOn?.to],
  ['taken_from', (line) => takenWords(line)],
];

function carrierTable(plan: PackPlan): Table {
  return [
    ['load', 'cart', 'item', 'model', 'count'],
    ...plan.hardware.lines.flatMap((line) => line.carriers.map(({ load, cart, count }) => [load, cart, line.item, line.model, count])),
  ];
}

function chainTable(plan: PackPlan): Table {
  return [
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
  ];
}

function truckTable(plan: PackPlan): Table {
  return [
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
  ];
}

function dueTable(plan: PackPlan): Table {
  return [
    ['item', 'kind', 'model', 'where', 'last_examined_on', 'due_on', 'state'],
    ...plan.due.items.map((item) => [item.item, item.kind, item.model, item.where, item.lastExaminedOn, item.dueOn, item.state]),
  ];
}

function findingTable(plan: PackPlan): Table {
  return [
    ['weight', 'section', 'code', 'subject', 'date', 'sentence'],
    ...plan.findings.map((each) => [each.weight, each.section, each.code, each.subject, each.date, each.sentence]),
  ];
}
