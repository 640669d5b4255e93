import { standardGravityMps2 } from '#kernel';
import type { Hang } from '#tour-file';
import type { HangResult } from '../contract/index.js';
import type { Checking } from './checking.js';

/** Every hang weighs what its parts weigh, its picks carry that weight, and its boxes are those of its carts. */
export function checkPicks(checking: Checking): void {
  const { hangs, plan, wrong } = checking;
  for (const hang of hangs) {
    const results = plan.picks.hangs.filter((each) => each.hang === hang.id);
    if (results.length !== 1) wrong('loads', hang.id, `it stands ${results.length} times among the picks`);
    else checkHang(checking, hang, results[0]!);
  }
  if (plan.picks.hangs.length !== hangs.length) wrong('loads', plan.show.id, `${plan.picks.hangs.length} hangs of ${hangs.length}`);
}

function checkHang(checking: Checking, hang: Hang, result: HangResult): void {
  const { wrong } = checking;
  const near = (what: string, is: number, wanted: number) => {
    if (!(Math.abs(is - wanted) <= 1e-6 * Math.max(1, Math.abs(wanted)))) wrong('loads', hang.id, `${what} is ${is}, added up ${wanted}`);
  };
  near('the mass', result.massKg, massKg(checking, hang));
  near(
    'the sum of the list of masses',
    result.masses.reduce((sum, each) => sum + each.massKg, 0),
    result.massKg,
  );
  if (hang.picks.length <= 2) {
    if (result.picks.map((each) => each.hole).join('\n') !== hang.picks.map((each) => each.hole).join('\n'))
      wrong('loads', hang.id, 'its picks are not those of the design');
    if ((result.pullBack?.figures ?? null) === null)
      near(
        'the sum of the reactions',
        result.picks.reduce((sum, each) => sum + each.reactionN, 0),
        result.massKg * standardGravityMps2,
      );
    for (const pick of result.picks)
      near(`the hook load of hole ${pick.hole}`, pick.hookLoadKg, pick.reactionN / standardGravityMps2 + pick.belowHookKg);
  } else if (!result.unshared || result.picks.length > 0) wrong('loads', hang.id, 'more than two points in one line are given shares');
  const riding = new Map(
    checking.plan.carts.loads
      .filter((each) => each.hang === hang.id)
      .flatMap((load) => load.boxes.map((box) => [box.position, box.serial])),
  );
  for (const box of result.boxes)
    if ((riding.get(box.position) ?? null) !== box.serial)
      wrong('loads', hang.id, `position ${box.position} is another box than in its cart`);
}

/** Grid, boxes, frames between models that do not link by themselves, extras, and a loom for each cart load. */
function massKg({ file, plan }: Checking, hang: Hang): number {
  const { catalogue, systems } = file;
  let sum = catalogue.grids.find((each) => each.model === hang.grid)?.massKg ?? NaN;
  hang.boxes.forEach((box, index) => {
    sum += catalogue.boxes.find((each) => each.model === box.model)?.massKg ?? NaN;
    const above = hang.boxes[index - 1];
    const frame = systems
      .flatMap((each) => each.adapters ?? [])
      .find((each) => above && each.joins[0] === above.model && each.joins[1] === box.model);
    sum += frame?.massKg ?? 0;
  });
  for (const extra of hang.extras) sum += extra.massKg;
  for (const plate of hang.frames ?? []) sum += catalogue.frames.find((each) => each.model === plate)?.massKg ?? NaN;
  if (hang.loom !== undefined) {
    const loom = catalogue.looms.find((each) => each.model === hang.loom)?.massKg ?? NaN;
    sum += loom * plan.carts.loads.filter((each) => each.hang === hang.id).length;
  }
  return sum;
}
