import type { Hang } from '#tour-file';
import type { Kit } from './kit.js';

/** Only what people call it changes; the id stays, and the name is left out where it is the id. */
export function named(hang: Hang, name: string): Hang {
  const { name: _before, ...rest } = hang;
  return name === hang.id ? rest : { ...rest, name };
}

/** An id that no hang of the show has, nor is called by. */
export function freeId(hangs: readonly Hang[]): string {
  const taken = new Set(hangs.flatMap((each) => [each.id, each.name ?? each.id]));
  let number = hangs.length + 1;
  while (taken.has(`Hang ${number}`)) number++;
  return `Hang ${number}`;
}

/** The hang once more, below itself, under a new name. A serial that is wanted in the one is not wanted in the other. */
export function withCopy(hangs: readonly Hang[], at: number): Hang[] {
  const of = hangs[at];
  if (!of) return [...hangs];
  const { name: _name, gridSerial: _grid, ...rest } = structuredClone(of);
  const copy: Hang = {
    ...rest,
    id: freeId(hangs),
    boxes: rest.boxes.map(({ serial: _serial, ...box }) => box),
    picks: rest.picks.map(({ hoistSerial: _hoist, ...pick }) => pick),
  };
  return [...hangs.slice(0, at + 1), copy, ...hangs.slice(at + 1)];
}

/** A hang to begin with: two picks on the first grid, no boxes. */
export const newHang = (id: string, kit: Kit): Hang => ({
  id,
  grid: kit.grids[0]?.model,
  goesUp: 1,
  trimHeightMm: 8000,
  tiltDownDeg: 0,
  picks: firstPicks(kit),
  boxes: [],
  extras: [],
  partLoad: 'bottom',
});

function firstPicks(kit: Kit): Hang['picks'] {
  const holes = kit.grids[0]?.holes ?? [];
  return [holes[2], holes.at(-3)].map((each) => newPick(each?.hole ?? '', kit));
}

const newPick = (hole: string, kit: Kit): Hang['picks'][number] => ({
  hole,
  hoist: kit.names.hoists?.[0] ?? '',
  shackles: kit.names.shackles?.slice(0, 1) ?? [],
  slings: kit.names.slings?.slice(0, 1) ?? [],
});

/** `of` empty: told otherwise, a mirror keeps what it had of its original as its own. */
export function mirrored(hang: Hang, of: string, original: Hang | undefined): Hang {
  if (of !== '')
    return { ...hang, mirrorOf: of, grid: undefined, tiltDownDeg: undefined, picks: [], boxes: [], loom: undefined, extras: [] };
  const { mirrorOf: _mirrorOf, ...rest } = hang;
  if (!original) return rest;
  const { grid, tiltDownDeg, picks, boxes, loom, extras } = original;
  return { ...rest, grid, tiltDownDeg, picks, boxes, loom, extras };
}

/** More picks take holes that are free, from the rear; one pick has no wanted tilt. */
export function withPicks(hang: Hang, count: number, kit: Kit): Hang {
  const holes = kit.grids.find((each) => each.model === hang.grid)?.holes ?? [];
  const free = holes.filter((each) => !hang.picks.some((pick) => pick.hole === each.hole)).reverse();
  const more = free.slice(0, Math.max(0, count - hang.picks.length)).map(({ hole }) => newPick(hole, kit));
  return { ...hang, picks: [...hang.picks, ...more].slice(0, count), tiltDownDeg: count === 1 ? undefined : (hang.tiltDownDeg ?? 0) };
}

/** One box more at the bottom, of the model above it. */
export function withBox(hang: Hang, kit: Kit): Hang {
  const splayDeg = hang.boxes.length === 0 ? (kit.grids.find((each) => each.model === hang.grid)?.splaysDeg[0] ?? 0) : 0;
  return { ...hang, boxes: [...hang.boxes, { model: hang.boxes.at(-1)?.model ?? kit.boxes[0]?.model ?? '', splayDeg }] };
}

/** Without the fields that say nothing, so that a saved tour is as short as it was. */
export const clean = <T extends object>(value: T): T =>
  Object.fromEntries(Object.entries(value).filter(([, each]) => each !== undefined)) as T;
