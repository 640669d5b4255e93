import { type Hang, type Item, type TourFile, adapterBetween } from '../shapes/index.js';
import { modelsOfKind } from './check-items.js';
import type { FaultList } from './fault-list.js';

/** A hang of its own against the catalogue, the grid and the items. */
export function checkHang(file: TourFile, hang: Hang, at: string, items: ReadonlyMap<string, Item>, faults: FaultList): void {
  const models = {
    grid: modelsOfKind(file.catalogue, 'grid'),
    box: modelsOfKind(file.catalogue, 'box'),
    hoist: modelsOfKind(file.catalogue, 'hoist'),
    shackle: modelsOfKind(file.catalogue, 'shackle'),
    sling: modelsOfKind(file.catalogue, 'sling'),
    loom: modelsOfKind(file.catalogue, 'loom'),
  };
  const grid = file.catalogue.grids.find((each) => each.model === hang.grid);
  if (hang.grid === undefined) faults.add(`${at}.grid`, null, 'the model of the grid');
  else if (!grid) faults.unknown(`${at}.grid`, hang.grid, models.grid, 'a grid model');
  if (hang.boxes.length === 0) faults.add(`${at}.boxes`, 'a list of 0', 'at least one box');
  if (hang.loom !== undefined) faults.unknown(`${at}.loom`, hang.loom, models.loom, 'a loom model');
  checkSerial(`${at}.gridSerial`, hang.gridSerial, 'grid', hang.grid, items, faults);

  hang.boxes.forEach((box, index) => {
    const field = `${at}.boxes[${index}]`;
    const model = file.catalogue.boxes.find((each) => each.model === box.model);
    if (!model) return faults.unknown(`${field}.model`, box.model, models.box, 'a box model');
    const allowed = index === 0 ? grid?.splaysDeg : model.splaysDeg;
    if (allowed && !allowed.includes(box.splayDeg))
      faults.add(
        `${field}.splayDeg`,
        box.splayDeg,
        `${index === 0 ? 'one of the angles between grid and top box' : `a splay that ${box.model} has`}: ${allowed.join(', ')}`,
      );
    const above = hang.boxes[index - 1]?.model;
    const joined = above !== undefined && adapterBetween(file.systems, above, box.model) !== undefined;
    if (grid && model.system !== grid.system && !joined && systemAbove(file, hang, index) !== model.system)
      faults.add(`${field}.model`, box.model, `a box of the rigging system ${grid.system}; ${box.model} belongs to ${model.system}`);
    checkSerial(`${field}.serial`, box.serial, 'box', box.model, items, faults);
    return undefined;
  });

  const frames = modelsOfKind(file.catalogue, 'frame');
  hang.frames?.forEach((model, index) => faults.unknown(`${at}.frames[${index}]`, model, frames, 'a frame model'));
  checkPicks(hang, at, grid?.holes, models, items, faults);
  hang.extras.forEach((extra, index) => {
    if (extra.position > hang.boxes.length)
      faults.add(`${at}.extras[${index}].position`, extra.position, `0 for the grid, or a position from 1 to ${hang.boxes.length}`);
  });
}

type SteelModels = Record<'hoist' | 'shackle' | 'sling', ReadonlyMap<string, unknown>>;

function checkSteel(
  field: string,
  steel: { readonly shackles: readonly string[]; readonly slings: readonly string[] } | undefined,
  models: SteelModels,
  faults: FaultList,
): void {
  steel?.shackles.forEach((model, n) => faults.unknown(`${field}.shackles[${n}]`, model, models.shackle, 'a shackle model'));
  steel?.slings.forEach((model, n) => faults.unknown(`${field}.slings[${n}]`, model, models.sling, 'a sling model'));
}

/** A line to an anchor: its box is there, and exactly what its number of picks leaves open is given. */
function checkPullBack(hang: Hang, at: string, models: SteelModels, faults: FaultList): void {
  const { pullBack } = hang;
  if (!pullBack) return;
  const field = `${at}.pullBack`;
  checkSteel(field, pullBack, models, faults);
  if (pullBack.position > hang.boxes.length)
    faults.add(`${field}.position`, pullBack.position, `0 for the grid, or a position from 1 to ${hang.boxes.length}`);
  const one = hang.picks.length === 1;
  if (one !== (pullBack.tiltDownDeg !== undefined))
    faults.add(
      `${field}.tiltDownDeg`,
      pullBack.tiltDownDeg,
      one ? 'the wanted tilt: with one pick the line makes it' : 'no tilt: with two picks the hoists make it',
    );
  if (one !== (pullBack.tensionN === undefined))
    faults.add(
      `${field}.tensionN`,
      pullBack.tensionN,
      one ? 'no tension: with one pick it is solved' : 'the tension of the line in newtons',
    );
}

type Hole = { readonly hole: string; readonly behindMm: number; readonly aboveMm: number };

/** Picks nearer to one vertical than this share no load that could be told (geometry, no published source). */
const leastSpanMm = 1;

/** The first two picks of a hang, which its loads follow from, must not stand above one another. */
function checkSpan({ picks, tiltDownDeg }: Hang, at: string, holes: readonly Hole[] | undefined, faults: FaultList): void {
  const [first, second] = picks.map((pick) => holes?.find((each) => each.hole === pick.hole));
  if (!first || !second || first === second) return;
  const tilt = ((tiltDownDeg ?? 0) * Math.PI) / 180;
  const across = second.behindMm - first.behindMm;
  if (across === 0) faults.add(`${at}.picks[1].hole`, second.hole, 'a hole in front of or behind that of the first pick');
  else if (Math.abs(across * Math.cos(tilt) - (second.aboveMm - first.aboveMm) * Math.sin(tilt)) < leastSpanMm)
    faults.add(`${at}.tiltDownDeg`, tiltDownDeg ?? null, 'a tilt at which the first two picks are not above one another');
}

function checkPicks(
  hang: Hang,
  at: string,
  holes: readonly Hole[] | undefined,
  models: SteelModels,
  items: ReadonlyMap<string, Item>,
  faults: FaultList,
): void {
  if (hang.picks.length === 0) faults.add(`${at}.picks`, 'a list of 0', 'one pick or two');
  checkPullBack(hang, at, models, faults);
  checkSteel(`${at}.secondary`, hang.secondary, models, faults);
  if (hang.tiltNeeds && hang.tiltNeeds.fromDeg > hang.tiltNeeds.toDeg)
    faults.add(`${at}.tiltNeeds.toDeg`, hang.tiltNeeds.toDeg, `no less than the first, ${hang.tiltNeeds.fromDeg}`);
  if (hang.picks.length >= 2 && hang.tiltDownDeg === undefined)
    faults.add(`${at}.tiltDownDeg`, null, 'the tilt of the grid in degrees, positive nose down');
  if (hang.picks.length === 1 && hang.tiltDownDeg !== undefined)
    faults.add(`${at}.tiltDownDeg`, hang.tiltDownDeg, 'no tilt: with one pick the hole decides it');
  checkSpan(hang, at, holes, faults);
  const taken = new Set<string>();
  hang.picks.forEach((pick, index) =>
    faults.twice(`${at}.picks[${index}].hole`, pick.hole, taken, 'another hole for each pick: each hole'),
  );
  hang.picks.forEach((pick, index) => {
    const field = `${at}.picks[${index}]`;
    if (holes && !holes.some((each) => each.hole === pick.hole))
      faults.add(`${field}.hole`, pick.hole, `a hole of this grid: ${holes.map((each) => each.hole).join(', ')}`);
    faults.unknown(`${field}.hoist`, pick.hoist, models.hoist, 'a hoist model');
    checkSteel(field, pick, models, faults);
    checkSteel(`${field}.bridle`, pick.bridle, models, faults);
    pick.bridle?.legs.forEach(({ shackles = [], slings = [] }, leg) =>
      checkSteel(`${field}.bridle.legs[${leg}]`, { shackles, slings }, models, faults),
    );
    checkSerial(`${field}.hoistSerial`, pick.hoistSerial, 'hoist', pick.hoist, items, faults);
  });
}

function checkSerial(
  field: string,
  serial: string | undefined,
  kind: string,
  model: string | undefined,
  items: ReadonlyMap<string, Item>,
  faults: FaultList,
): void {
  if (serial === undefined) return;
  const item = items.get(serial);
  if (!item || item.kind !== kind) faults.add(field, serial, `the serial of a ${kind} on file`);
  else if (model !== undefined && item.model !== model)
    faults.add(field, serial, `a ${kind} of model ${model}; ${serial} is ${item.model}`);
}

/** The rigging system of the box above, which a frame may have brought in; that of the grid for the first box. */
function systemAbove(file: TourFile, hang: Hang, index: number): string | undefined {
  const above = hang.boxes[index - 1]?.model;
  return above === undefined ? undefined : file.catalogue.boxes.find((each) => each.model === above)?.system;
}
