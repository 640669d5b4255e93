import { canonicalJson, daysBetween } from '#kernel';
import { countryOf, isPartOfCountry, placeName } from '#trade';
import { type Hang, type Item, type Show, type TourFile, hangName } from '../shapes/index.js';
import { checkHang } from './check-hang.js';
import type { FaultList } from './fault-list.js';

/** The tour's dates, shows and hangs against the catalogue and the items. */
export function checkTour(file: TourFile, faults: FaultList): void {
  const { tour } = file;
  const items = new Map(file.items.map((each) => [each.id, each]));
  if (!faults.range('tour.prepFrom', tour.prepFrom, tour.returnTo) && daysBetween(tour.prepFrom, tour.returnTo) > 1000)
    faults.add('tour.returnTo', tour.returnTo, 'at most 1,000 days after the first prep day');
  checkPlaces(file, faults);
  checkReferences(file, items, faults);
  checkDesigns(file, items, faults);
  const shows = new Set<string>();
  tour.shows.forEach((show, index) => {
    const field = `tour.shows[${index}]`;
    faults.twice(`${field}.id`, show.id, shows, 'each show');
    checkShow(file, show, field, items, faults);
  });
}

/** Each design once, by id and by name; what it hangs agrees with the catalogue as the hangs of a show do. */
function checkDesigns(file: TourFile, items: ReadonlyMap<string, Item>, faults: FaultList): void {
  const [ids, names] = [new Set<string>(), new Set<string>()];
  (file.tour.designs ?? []).forEach((design, index) => {
    const field = `tour.designs[${index}]`;
    faults.twice(`${field}.id`, design.id, ids, 'each design');
    faults.twice(`${field}.name`, design.name, names, 'each design by another name: each name');
    checkHangs(file, design, field, items, faults);
  });
}

/** A part of a country has rules of its own, or it is the country that counts. */
function checkPlaces({ tour, examinationRules }: TourFile, faults: FaultList): void {
  const ruled = new Set(examinationRules.map((each) => each.jurisdiction));
  tour.jurisdictions.forEach((code, index) => {
    if (isPartOfCountry(code) && !ruled.has(code))
      faults.add(
        `tour.jurisdictions[${index}]`,
        code,
        `a place with rules on file: none are of ${code}; the nearest is ${placeName(countryOf(code))}`,
      );
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
  const spares = new Set<string>();
  tour.spares.forEach((each, index) => {
    const ways = Number(each.lossPerUse !== undefined) + Number(each.prior !== undefined);
    if (ways !== 1)
      faults.add(`tour.spares[${index}].lossPerUse`, each.lossPerUse, 'either lossPerUse or prior (with counted), one of them');
    if (each.level === undefined && tour.spareTrunk === undefined)
      faults.add(`tour.spares[${index}].level`, null, 'a level such as 0.95, or tour.spareTrunk with the level of the whole trunk');
    faults.twice(`tour.spares[${index}].item`, each.item, spares, 'each model');
  });
}

function checkShow(file: TourFile, show: Show, field: string, items: ReadonlyMap<string, Item>, faults: FaultList): void {
  const { tour } = file;
  if (!faults.range(`${field}.from`, show.from, show.to)) {
    if (show.from < tour.prepFrom) faults.add(`${field}.from`, show.from, `no earlier than the tour's first prep day, ${tour.prepFrom}`);
    if (show.to > tour.returnTo) faults.add(`${field}.to`, show.to, `no later than the tour's last return day, ${tour.returnTo}`);
  }
  faults.unknown(`${field}.loadRule`, show.loadRule, new Set(file.loadRules.map((each) => each.id)), 'a load rule');
  checkBeams(show, field, faults);
  if (show.design !== undefined)
    faults.unknown(`${field}.design`, show.design, new Set((tour.designs ?? []).map((each) => each.id)), 'a design of this tour');
  checkHangs(file, show, field, items, faults);
}

/** What a show or a design hangs. A hang of its own that is as in the design of its show is held against the catalogue there, and told once. */
function checkHangs(
  file: TourFile,
  of: Pick<Show, 'hangs' | 'design'>,
  field: string,
  items: ReadonlyMap<string, Item>,
  faults: FaultList,
): void {
  const design = file.tour.designs?.find((each) => each.id === of.design);
  const hangs = new Set<string>();
  const names = new Set<string>();
  const serials = new Set<string>();
  const designed = new Set(design?.hangs.map((each) => canonicalJson(each)));
  of.hangs.forEach((hang, index) => {
    const at = `${field}.hangs[${index}]`;
    faults.twice(`${at}.id`, hang.id, hangs, 'each hang');
    faults.twice(hang.name === undefined ? `${at}.id` : `${at}.name`, hangName(hang), names, 'each hang by another name: each name');
    if (hang.pointHeightMm !== undefined && hang.pointHeightMm <= hang.trimHeightMm)
      faults.add(`${at}.pointHeightMm`, hang.pointHeightMm, `more than the trim height, ${hang.trimHeightMm} mm`);
    if (hang.mirrorOf !== undefined) checkMirror(of, hang, at, faults);
    else if (!designed.has(canonicalJson(hang))) checkHang(file, hang, at, items, faults);
    const named = [hang.gridSerial, ...hang.picks.map((each) => each.hoistSerial), ...hang.boxes.map((each) => each.serial)];
    for (const serial of named) if (serial !== undefined) faults.twice(`${at} (serial)`, serial, serials, 'each serial');
  });
}

function checkMirror(show: Pick<Show, 'hangs'>, hang: Hang, at: string, faults: FaultList): void {
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

/** Each beam once, its low steel below its high steel, and every pick on one that is there. */
function checkBeams({ beams = [], hangs }: Show, field: string, faults: FaultList): void {
  const names = new Set<string>();
  beams.forEach(({ name, highSteelMm, lowSteelMm }, index) => {
    const at = `${field}.beams[${index}]`;
    faults.twice(`${at}.name`, name, names, 'each beam');
    if (highSteelMm !== undefined && lowSteelMm !== undefined && lowSteelMm > highSteelMm)
      faults.add(`${at}.lowSteelMm`, lowSteelMm, `no more than its high steel, ${highSteelMm}`);
  });
  hangs.forEach((hang, index) =>
    hang.picks.forEach(({ beam }, pick) => {
      if (beam !== undefined) faults.unknown(`${field}.hangs[${index}].picks[${pick}].beam`, beam, names, 'a truss or beam of the show');
    }),
  );
}
