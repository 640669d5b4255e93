import type { Hang, PinUse, Show, TourFile } from '#tour-file';
import type { Checking } from './checking.js';

/** Pins joint by joint, hoists, shackles and slings pick by pick, counted again; and nothing short without a word. */
export function checkHardware({ file, show, hangs, plan, wrong }: Checking): void {
  const wanted = new Map<string, number>();
  const add = (key: string, count: number) => wanted.set(key, (wanted.get(key) ?? 0) + count);
  for (const hang of hangs) {
    const gridPins = file.catalogue.grids.find((each) => each.model === hang.grid)?.pins ?? [];
    hang.boxes.forEach(({ model }, index) => {
      const own = file.catalogue.boxes.find((each) => each.model === model)?.pins ?? [];
      for (const pin of index === 0 ? firstJoint(gridPins, own) : own) add(pin.pin, pin.count);
    });
    if (hang.boxes.length === 0) for (const pin of gridPins) add(pin.pin, pin.count);
    for (const model of lifted(hang)) add(model, 1);
    for (const model of framesBetween(file, hang)) {
      add(model, 1);
      for (const pin of file.catalogue.frames.find((each) => each.model === model)?.pins ?? []) add(pin.pin, pin.count);
    }
  }
  for (const model of controlWanted(file, show, hangs)) add(model, 1);
  for (const load of plan.carts.loads) {
    const base = file.catalogue.carts.find((each) => each.model === load.cartModel)?.basePins;
    if (base && base.count > 0) add(base.pin, base.count);
    const loom = hangs.find((each) => each.id === load.hang)?.loom;
    if (loom !== undefined) add(loom, 1);
  }
  for (const [key, count] of wanted) {
    const found = plan.hardware.lines.filter((each) => each.key === key).map((each) => each.fitted);
    if (found.length !== 1 || found[0] !== count) wrong('hardware', key, `${found.join(' and ') || 'none'} fitted, counted ${count}`);
  }
  // What hangs at a pick is said beside the pick, everything else in its line.
  const said = new Set(plan.findings.flatMap((each) => (each.weight === 'stop' && each.section === 'hardware' ? [each.subject] : [])));
  const isPickShort = plan.findings.some((each) => each.weight === 'stop' && each.code === 'item-missing');
  for (const line of plan.hardware.lines)
    if (line.missing > 0 && !said.has(line.model) && !isPickShort)
      wrong('hardware', line.key, `${line.missing} missing and nothing says so`);
}

/** Of the joint between grid and top box: the grid's own pins, and the box's where the grid leaves a role open. */
const firstJoint = (grid: readonly PinUse[], box: readonly PinUse[]): PinUse[] => [
  ...grid,
  ...box.filter((each) => !grid.some((other) => other.role === each.role)),
];

function lifted(hang: Hang): string[] {
  // What others bring is theirs to count.
  const picks = hang.picks.filter((each) => each.kitBy === undefined);
  const legs = picks.flatMap(({ bridle }) =>
    (bridle?.legs ?? []).map((leg) => ({ shackles: leg.shackles ?? bridle!.shackles, slings: leg.slings ?? bridle!.slings })),
  );
  const steel = [...picks, ...legs, hang.pullBack, hang.secondary];
  return [
    ...(hang.grid === undefined ? [] : [hang.grid]),
    ...picks.map((each) => each.hoist),
    ...steel.flatMap((each) => [...(each?.shackles ?? []), ...(each?.slings ?? [])]),
  ];
}

/** Plates at the grid, and frames with a model on file between two boxes, one name for each piece. */
function framesBetween({ systems }: TourFile, { frames = [], boxes }: Hang): string[] {
  const found = [...frames];
  for (const [index, lower] of boxes.entries())
    for (const { joins, model } of systems.flatMap((each) => each.adapters ?? []))
      if (model !== undefined && boxes[index - 1]?.model === joins[0] && lower.model === joins[1]) found.push(model);
  return found;
}

/** One name for each piece that goes with a hoist of this kit, and for each tag line. */
function controlWanted({ catalogue, systems, loadRules }: TourFile, show: Show, hangs: readonly Hang[]): string[] {
  const reads = loadRules.find((each) => each.id === show.loadRule)?.reading !== undefined;
  const picks = hangs.flatMap((each) => each.picks).filter((each) => each.kitBy === undefined);
  const hoists = picks.map((pick) => catalogue.hoists.find((each) => each.model === pick.hoist));
  const eachHoist = hoists.flatMap((hoist) => [hoist?.motorCable, hoist?.chainBag, reads ? hoist?.cell : undefined]);
  const shared = catalogue.controls.flatMap(({ model, hoists: most, with: along = [] }) => {
    const run = hoists.filter((each) => each?.controller === model).length;
    const names = [model, ...along.flatMap((each) => Array<string>(each.count).fill(each.model))];
    return Array.from({ length: most === undefined ? 0 : Math.ceil(run / most) }, () => names).flat();
  });
  const lines = hangs.flatMap((hang) => {
    const system = catalogue.grids.find((each) => each.model === hang.grid)?.system;
    return systems.find((each) => each.id === system)?.tagLines ?? [];
  });
  return [...eachHoist.filter((each) => each !== undefined), ...shared, ...lines];
}
