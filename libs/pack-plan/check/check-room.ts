import type { Hang } from '#tour-file';
import { listSubjects } from '#trade';
import type { HangResult } from '../contract/index.js';
import type { Checking } from './checking.js';

type Sums = { readonly lowestZMm: number; readonly zOf: (behindMm: number, aboveMm: number) => number };

/** Heights of every hang walked down again from the grid, the lengths between hole and point added up again, and nothing negative without a word. */
export function checkRoom(checking: Checking): void {
  for (const hang of checking.hangs) {
    const result = checking.plan.picks.hangs.find((each) => each.hang === hang.id);
    if (result && !result.room) checking.wrong('room', hang.id, 'it says nothing of its heights');
    if (result?.room) checkHang(checking, hang, result, result.room);
    for (const { load, leftMm } of result?.room?.rollIns ?? [])
      if (leftMm < -1e-3 && !isSaid(checking, 'no-room-for-cart', hang.id))
        checking.wrong('room', hang.id, `the cart of ${load} lacks ${-leftMm} mm and nothing says so`);
  }
  for (const { hang, otherHang, apartMm } of checking.plan.picks.site?.clearances ?? [])
    if (apartMm < -1e-3 && !(isSaid(checking, 'hangs-touch', hang) && isSaid(checking, 'hangs-touch', otherHang)))
      checking.wrong('room', hang, `it stands in ${otherHang} by ${-apartMm} mm and nothing says so`);
}

const isSaid = ({ plan }: Checking, code: string, hang: string): boolean =>
  plan.findings.some(
    ({ fact }) => fact.code === code && listSubjects(fact.subjects).some((each) => each.kind === 'hang' && each.id === hang),
  );

function checkHang(checking: Checking, hang: Hang, result: HangResult, room: NonNullable<HangResult['room']>): void {
  const { wrong, plan } = checking;
  const { lowestZMm, zOf } = walked(checking, hang, result.tiltDownDeg);
  const near = (what: string, is: number, wanted: number) => {
    if (!(Math.abs(is - wanted) <= 1e-6 * Math.max(1, Math.abs(wanted)))) wrong('room', hang.id, `${what} is ${is}, walked ${wanted}`);
  };
  if (room.trimTo !== (hang.trimTo ?? 'grid')) wrong('room', hang.id, `trim measures to the ${room.trimTo}`);
  if (room.trimTo === 'grid') near('the mark of the trim height', room.markZMm, 0);
  if (room.trimTo === 'bottom edge') near('the lowest point', room.lowestHeightMm, hang.trimHeightMm);
  const base = hang.trimHeightMm - room.markZMm;
  // A drawn grid may reach lower than a single box that is turned far; nothing may be higher.
  if (room.lowestHeightMm > base + lowestZMm + 1e-6)
    wrong('room', hang.id, `the lowest point is ${room.lowestHeightMm}, walked ${base + lowestZMm}`);
  const grid = checking.file.catalogue.grids.find((each) => each.model === hang.grid);
  for (const pick of room.picks) {
    const hole = grid?.holes.find((each) => each.hole === pick.hole);
    near(`the height of hole ${pick.hole}`, pick.holeHeightMm, hole ? base + zOf(hole.behindMm, hole.aboveMm) : NaN);
    if (hang.pointHeightMm === undefined) continue;
    near(
      `what is left at hole ${pick.hole}`,
      pick.leftMm ?? NaN,
      hang.pointHeightMm - pick.holeHeightMm - lengthsMm(checking, hang, pick.hole),
    );
  }
  const said = (code: string, hole: string | null) =>
    plan.findings.some(
      ({ fact }) =>
        fact.code === code &&
        listSubjects(fact.subjects).some((each) =>
          each.kind === 'pick' ? each.hang === hang.id && each.hole === hole : each.kind === 'hang' && each.id === hang.id,
        ),
    );
  for (const { hole, leftMm } of room.picks)
    if (leftMm !== null && leftMm < -1e-3 && !said('no-headroom', hole))
      wrong('room', hang.id, `hole ${hole} has ${leftMm} mm left and nothing says so`);
  if (room.lowestHeightMm < (hang.deckHeightMm ?? 0) - 1e-3 && !said('below-floor', null))
    wrong('room', hang.id, `it reaches down to ${room.lowestHeightMm} mm and nothing says so`);
}

/** Box by box down the front pivots, each turned by the splays above it; a box that needs a frame hangs below it. */
function walked({ file: { catalogue, systems } }: Checking, hang: Hang, tiltDownDeg: number): Sums {
  const down = (turnDeg: number, behindMm: number, aboveMm: number) => {
    const turn = (turnDeg * Math.PI) / 180;
    return behindMm * Math.sin(turn) + aboveMm * Math.cos(turn);
  };
  let [pivotZ, turnDeg, lowestZMm] = [0, tiltDownDeg, Infinity];
  const step = (body: { frontHeightMm: number; rearHeightMm: number; depthMm: number } | undefined) => {
    if (!body) return;
    const taper = (body.frontHeightMm - body.rearHeightMm) / 2;
    const corners = [
      down(turnDeg, 0, -body.frontHeightMm),
      down(turnDeg, body.depthMm, taper - body.frontHeightMm),
      down(turnDeg, body.depthMm, -taper),
    ];
    lowestZMm = Math.min(lowestZMm, pivotZ, ...corners.map((each) => pivotZ + each));
    pivotZ += corners[0]!;
  };
  hang.boxes.forEach((box, index) => {
    const above = hang.boxes[index - 1]?.model;
    step(systems.flatMap((each) => each.adapters ?? []).find((each) => each.joins[0] === above && each.joins[1] === box.model));
    turnDeg += box.splayDeg;
    step(catalogue.boxes.find((each) => each.model === box.model));
  });
  return { lowestZMm, zOf: (behindMm, aboveMm) => down(tiltDownDeg, behindMm, aboveMm) };
}

/** Shackles, slings and hoist of a pick end to end, and how far a bridle lets its hook down. */
function lengthsMm({ file: { catalogue } }: Checking, hang: Hang, hole: string): number {
  const pick = hang.picks.find((each) => each.hole === hole);
  const hoist = catalogue.hoists.find((each) => each.model === pick?.hoist);
  let sum = (hoist?.bodyMm ?? 0) + (hoist?.hooksMm ?? 0);
  for (const model of pick?.shackles ?? []) sum += catalogue.shackles.find((each) => each.model === model)?.insideMm ?? 0;
  for (const model of pick?.slings ?? []) sum += catalogue.slings.find((each) => each.model === model)?.lengthMm ?? NaN;
  return sum + (pick?.bridle?.legs ?? []).reduce((most, each) => Math.max(most, each.aboveMm), 0);
}
