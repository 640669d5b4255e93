import type { HangResult, PackPlan } from '#pack-plan';

/** A thing with a serial, or a lot, that hangs over heads, and where. */
export interface InTheAir {
  readonly item: string;
  readonly where: string;
}

export interface HangInTheAir {
  readonly hang: HangResult;
  readonly items: readonly InTheAir[];
}

/** What of a plan is in the air, by hang: grid, hoists, boxes, and the chosen steel of its picks. */
export function inTheAir({ picks, hardware }: PackPlan): readonly HangInTheAir[] {
  return picks.hangs.map((hang) => {
    const found = new Map<string, string>();
    const add = (item: string | null, where: string) => item !== null && !found.has(item) && found.set(item, where);
    add(hang.gridSerial, 'grid');
    for (const pick of hang.picks) add(pick.hoistSerial, `hoist, hole ${pick.hole}`);
    for (const hoist of hang.unshared?.hoists ?? []) add(hoist.serial, `hoist, hole ${hoist.hole}`);
    for (const { item, where, fact } of hardware.chosen) if (fact && 'hang' in fact && fact.hang === hang.hang) add(item, where);
    for (const box of hang.boxes) add(box.serial, `box ${box.position}`);
    return { hang, items: [...found].map(([item, where]) => ({ item, where })) };
  });
}

/** What moves and stops the hoists, and the tag lines: they stay on the ground. */
const staysOnTheGround = ['controller', 'control cable', 'handset', 'emergency stop', 'tag line'];

function taken({ hardware }: PackPlan, isOnTheGround: boolean): readonly InTheAir[] {
  const lots = new Map<string, string>();
  for (const line of hardware.lines.filter((each) => each.fitted > 0 && staysOnTheGround.includes(each.item) === isOnTheGround))
    for (const { lot, count } of line.takenFrom) lots.set(lot, `${line.item}, ${count} of it`);
  return [...lots].map(([item, where]) => ({ item, where }));
}

/** Lots of pins, shackles, slings and the like, and cells and frames, that the show takes from, for all hangs together. */
export const lotsInTheAir = (plan: PackPlan): readonly InTheAir[] => taken(plan, false);

/** Controllers with what goes with them, and tag lines. */
export const controlOnTheGround = (plan: PackPlan): readonly InTheAir[] => taken(plan, true);

/** Everything that the inspection file has to know of from the register. */
export const itemsInTheAir = (plan: PackPlan): readonly string[] => [
  ...new Set(
    [...inTheAir(plan).flatMap((each) => each.items), ...lotsInTheAir(plan), ...controlOnTheGround(plan)].map((each) => each.item),
  ),
];
