import { daysBetween } from '#kernel';
import { modelsOfKind } from './check-items.js';
import type { FaultList } from './fault-list.js';
import type { Item } from './item.js';
import type { Hang, Show } from './tour.js';
import type { TourFile } from './tour-file.js';

/** The tour's dates, shows and hangs against the catalogue and the items. */
export function checkTour(file: TourFile, faults: FaultList): void {
  const { tour } = file;
  const items = new Map(file.items.map((each) => [each.id, each]));
  if (!faults.range('tour.prepFrom', tour.prepFrom, tour.returnTo) && daysBetween(tour.prepFrom, tour.returnTo) > 1000)
    faults.add('tour.returnTo', tour.returnTo, 'at most 1,000 days after the first prep day');
  checkReferences(file, items, faults);
  const shows = new Set<string>();
  tour.shows.forEach((show, index) => {
    const field = `tour.shows[${index}]`;
    faults.twice(`${field}.id`, show.id, shows, 'each show');
    checkShow(file, show, field, items, faults);
  });
}

function checkReferences(file: TourFile, items: ReadonlyMap<string, Item>, faults: FaultList): void {
  const { tour } = file;
  const ofKind = (kind: string) => new Set([...items.values()].filter((each) => each.kind === kind).map((each) => each.id));
  const [trucks, cases] = [ofKind('truck'), ofKind('case')];
  const seen = new Set<string>();
  tour.trucks.forEach((id, index) => {
    faults.unknown(`tour.trucks[${index}]`, id, trucks, 'a truck');
    faults.twice(`tour.trucks[${index}]`, id, seen, 'each truck');
  });
  tour.freight.forEach((each, index) => {
    faults.unknown(`tour.freight[${index}].case`, each.case, cases, 'a case');
    faults.twice(`tour.freight[${index}].case`, each.case, seen, 'each case');
  });
  tour.spares.forEach((each, index) => {
    const ways = Number(each.lossPerUse !== undefined) + Number(each.prior !== undefined);
    if (ways !== 1)
      faults.add(`tour.spares[${index}].lossPerUse`, each.lossPerUse, 'either lossPerUse or prior (with counted), one of them');
  });
}

function checkShow(file: TourFile, show: Show, field: string, items: ReadonlyMap<string, Item>, faults: FaultList): void {
  const { tour } = file;
  if (!faults.range(`${field}.from`, show.from, show.to)) {
    if (show.from < tour.prepFrom) faults.add(`${field}.from`, show.from, `no earlier than the tour's first prep day, ${tour.prepFrom}`);
    if (show.to > tour.returnTo) faults.add(`${field}.to`, show.to, `no later than the tour's last return day, ${tour.returnTo}`);
  }
  if (!isTimeZone(show.timeZone)) faults.add(`${field}.timeZone`, show.timeZone, 'a time zone such as Europe/London');
  faults.unknown(`${field}.loadRule`, show.loadRule, new Set(file.loadRules.map((each) => each.id)), 'a load rule');
  const hangs = new Set<string>();
  const serials = new Set<string>();
  show.hangs.forEach((hang, index) => {
    const at = `${field}.hangs[${index}]`;
    faults.twice(`${at}.id`, hang.id, hangs, 'each hang');
    if (hang.mirrorOf === undefined) checkHang(file, hang, at, items, faults);
    else checkMirror(show, hang, at, faults);
    const named = [hang.gridSerial, ...hang.picks.map((each) => each.hoistSerial), ...hang.boxes.map((each) => each.serial)];
    for (const serial of named) if (serial !== undefined) faults.twice(`${at} (serial)`, serial, serials, 'each serial');
  });
}

function checkMirror(show: Show, hang: Hang, at: string, faults: FaultList): void {
  const other = show.hangs.find((each) => each.id === hang.mirrorOf);
  if (!other)
    faults.add(
      `${at}.mirrorOf`,
      hang.mirrorOf,
      `a hang of this show: ${show.hangs
        .map((each) => each.id)
        .filter((id) => id !== hang.id)
        .join(', ')}`,
    );
  else if (other.mirrorOf !== undefined || other.id === hang.id)
    faults.add(`${at}.mirrorOf`, hang.mirrorOf, 'a hang that is not itself a mirror');
  if (hang.boxes.length > 0)
    faults.add(`${at}.boxes`, `a list of ${hang.boxes.length}`, 'no boxes here: a mirror has those of its original');
  if (hang.picks.length > 0)
    faults.add(`${at}.picks`, `a list of ${hang.picks.length}`, 'no picks here: a mirror has those of its original');
}

function checkHang(file: TourFile, hang: Hang, at: string, items: ReadonlyMap<string, Item>, faults: FaultList): void {
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
    if (grid && model.system !== grid.system)
      faults.add(`${field}.model`, box.model, `a box of the rigging system ${grid.system}; ${box.model} belongs to ${model.system}`);
    checkSerial(`${field}.serial`, box.serial, 'box', box.model, items, faults);
    return undefined;
  });

  checkPicks(
    hang,
    at,
    grid?.holes.map((each) => each.hole),
    models,
    items,
    faults,
  );
  hang.extras.forEach((extra, index) => {
    if (extra.position > hang.boxes.length)
      faults.add(`${at}.extras[${index}].position`, extra.position, `0 for the grid, or a position from 1 to ${hang.boxes.length}`);
  });
}

function checkPicks(
  hang: Hang,
  at: string,
  holes: readonly string[] | undefined,
  models: Record<'hoist' | 'shackle' | 'sling', ReadonlyMap<string, unknown>>,
  items: ReadonlyMap<string, Item>,
  faults: FaultList,
): void {
  if (hang.picks.length === 0) faults.add(`${at}.picks`, 'a list of 0', 'one pick or two');
  if (hang.picks.length === 2 && hang.tiltDownDeg === undefined)
    faults.add(`${at}.tiltDownDeg`, null, 'the tilt of the grid in degrees, positive nose down');
  if (hang.picks.length === 1 && hang.tiltDownDeg !== undefined)
    faults.add(`${at}.tiltDownDeg`, hang.tiltDownDeg, 'no tilt: with one pick the hole decides it');
  if (hang.picks.length === 2 && hang.picks[0]!.hole === hang.picks[1]!.hole)
    faults.add(`${at}.picks[1].hole`, hang.picks[1]!.hole, 'another hole than that of the first pick');
  hang.picks.forEach((pick, index) => {
    const field = `${at}.picks[${index}]`;
    if (holes && !holes.includes(pick.hole)) faults.add(`${field}.hole`, pick.hole, `a hole of this grid: ${holes.join(', ')}`);
    faults.unknown(`${field}.hoist`, pick.hoist, models.hoist, 'a hoist model');
    pick.shackles.forEach((model, n) => faults.unknown(`${field}.shackles[${n}]`, model, models.shackle, 'a shackle model'));
    pick.slings.forEach((model, n) => faults.unknown(`${field}.slings[${n}]`, model, models.sling, 'a sling model'));
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

function isTimeZone(zone: string): boolean {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone }) !== undefined;
  } catch {
    return false;
  }
}
