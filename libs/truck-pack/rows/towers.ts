import type { Piece, Work } from '../case/index.js';

/** A piece in a tower, from the tower's corner nearest nose, left wall and floor, as it stands when the tower is not turned. */
export interface TowerPart {
  readonly piece: Piece;
  readonly dx: number;
  readonly dy: number;
  readonly dz: number;
  readonly turned: boolean;
}

/** A piece on the floor with what stands on it; what stands on it comes off at the same stop and lies inside its base. */
export interface Tower {
  readonly parts: readonly TowerPart[];
  readonly along: number;
  readonly across: number;
  readonly high: number;
  readonly massKg: number;
  readonly mayTurn: boolean;
  readonly firstOff: number;
}

interface Surface {
  readonly dx: number;
  readonly dy: number;
  readonly dz: number;
  readonly along: number;
  readonly across: number;
  /** What bears a load put here, the top one first. */
  readonly bearers: readonly Bearing[];
}

interface Bearing {
  readonly piece: Piece;
  onTopKg: number;
}

interface Growing {
  readonly base: Piece;
  readonly parts: TowerPart[];
  surfaces: Surface[];
}

/**
 * Towers of the pieces of one stop. Pieces that must stand on the floor, and what finds no top, are bases; the others go, dearest floor first, onto the top that they leave least of.
 * `order` sorts what may ride on top.
 */
export function buildTowers(pieces: readonly Piece[], headroomMm: number, order: (a: Piece, b: Piece) => number, work: Work): Tower[] {
  const towers: Growing[] = pieces.filter((each) => each.floorOnly).map(begun);
  for (const piece of pieces.filter((each) => !each.floorOnly).sort(order)) {
    work.add(0.1 * towers.length);
    if (!settle(towers, piece, headroomMm)) towers.push(begun(piece));
  }
  return towers.map(({ base, parts }) => ({
    parts,
    along: base.lengthMm,
    across: base.widthMm,
    high: parts.reduce((most, { piece, dz }) => Math.max(most, dz + piece.heightMm), 0),
    massKg: parts.reduce((sum, { piece }) => sum + piece.massKg, 0),
    mayTurn: parts.every(({ piece }) => piece.mayTurn),
    firstOff: base.firstOff,
  }));
}

function begun(base: Piece): Growing {
  const bearers = [{ piece: base, onTopKg: 0 }];
  return {
    base,
    parts: [{ piece: base, dx: 0, dy: 0, dz: 0, turned: false }],
    surfaces: [{ dx: 0, dy: 0, dz: base.heightMm, along: base.lengthMm, across: base.widthMm, bearers }],
  };
}

function settle(towers: readonly Growing[], piece: Piece, headroomMm: number): boolean {
  let best: { tower: Growing; surface: Surface; turned: boolean; waste: number } | undefined;
  for (const tower of towers) {
    // A tower that could be turned keeps that freedom only under pieces that may be turned too.
    if (tower.base.mayTurn && !piece.mayTurn && tower.base.lengthMm !== tower.base.widthMm) continue;
    for (const surface of tower.surfaces) {
      if (surface.dz + piece.heightMm > headroomMm) continue;
      if (!surface.bearers.every((each) => each.piece.maxOnTopKg === undefined || each.onTopKg + piece.massKg <= each.piece.maxOnTopKg))
        continue;
      for (const turned of piece.mayTurn ? [false, true] : [false]) {
        const [along, across] = turned ? [piece.widthMm, piece.lengthMm] : [piece.lengthMm, piece.widthMm];
        if (along > surface.along || across > surface.across) continue;
        const waste = surface.along * surface.across - along * across;
        if (!best || waste < best.waste) best = { tower, surface, turned, waste };
      }
    }
  }
  if (!best) return false;
  put(best.tower, best.surface, piece, best.turned);
  return true;
}

/** Into the corner of the surface; what is left of it becomes two surfaces, the piece's own top a third. */
function put(tower: Growing, surface: Surface, piece: Piece, turned: boolean): void {
  const [along, across] = turned ? [piece.widthMm, piece.lengthMm] : [piece.lengthMm, piece.widthMm];
  const { dx, dy, dz, bearers } = surface;
  tower.parts.push({ piece, dx, dy, dz, turned });
  for (const each of bearers) each.onTopKg += piece.massKg;
  const [restAlong, restAcross] = [surface.along - along, surface.across - across];
  const alongIsLarger = restAlong * surface.across >= restAcross * surface.along;
  const rests: Surface[] = [
    { dx: dx + along, dy, dz, along: restAlong, across: alongIsLarger ? surface.across : across, bearers },
    { dx, dy: dy + across, dz, along: alongIsLarger ? along : surface.along, across: restAcross, bearers },
    { dx, dy, dz: dz + piece.heightMm, along, across, bearers: [{ piece, onTopKg: 0 }, ...bearers] },
  ];
  tower.surfaces = [...tower.surfaces.filter((each) => each !== surface), ...rests.filter((each) => each.along > 0 && each.across > 0)];
}
