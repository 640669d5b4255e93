import type { Hang, PinUse } from '#tour-file';
import type { Checking } from './checking.js';

/** Pins joint by joint, hoists, shackles and slings pick by pick, counted again; and nothing short without a word. */
export function checkHardware({ file, hangs, plan, wrong }: Checking): void {
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
  }
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
