import { addDays, seededRandom } from '#kernel';

/** A tour file as written, with anything in it: it is damaged before it is read. */
type Written = any;

interface Chance {
  readonly below: (most: number) => number;
  readonly one: (list: readonly Written[]) => Written;
}

/** One kind of damage: what it does to the file, and what to call it. */
interface Damage {
  readonly name: string;
  readonly to: (file: Written, chance: Chance) => void;
}

const show = (file: Written, { one }: Chance): Written => one(file.tour.shows);
const hang = (file: Written, chance: Chance): Written =>
  chance.one((show(file, chance)?.hangs ?? []).filter((each: Written) => each.mirrorOf === undefined));
const itemOf = (file: Written, chance: Chance, ...kinds: string[]): Written =>
  chance.one(file.items.filter((each: Written) => kinds.length === 0 || kinds.includes(each.kind)));
const states = ['quarantined', 'in repair', 'retired', 'in service'];

const toItems: Damage[] = [
  {
    name: 'a state',
    to: (file, chance) => {
      const item = itemOf(file, chance, ...(chance.below(2) ? ['cart', 'box', 'truck'] : []));
      if (item) Object.assign(item, { state: chance.one(states), reason: 'found at return' });
    },
  },
  {
    name: 'many states',
    to: (file, chance) => {
      const kind = chance.one(['cart', 'box', 'hoist', 'grid', 'case', 'truck']);
      for (const item of file.items) if (item.kind === kind && chance.below(3) === 0) item.state = 'quarantined';
    },
  },
  {
    name: 'an item gone',
    to: (file, chance) => {
      const gone = itemOf(file, chance);
      file.items = file.items.filter((each: Written) => each !== gone);
      if (chance.below(2)) for (const each of file.items) if (each.stack) each.stack = each.stack.filter((id: string) => id !== gone?.id);
    },
  },
  {
    name: 'another depot',
    to: (file, chance) => {
      const item = itemOf(file, chance);
      if (item) item.depot = 'Harbour Depot';
    },
  },
  {
    name: 'a count',
    to: (file, chance) => {
      const lot = chance.one(file.items.filter((each: Written) => each.count !== undefined));
      if (lot) lot.count = chance.one([0, 1, Math.floor(lot.count / 2), lot.count + 7, -1]);
    },
  },
  {
    name: 'a stack',
    to: (file, chance) => {
      const [a, b] = [itemOf(file, chance, 'cart'), itemOf(file, chance, 'cart')];
      if (!a || !b) return;
      if (chance.below(3) === 0) a.stack = [];
      else if (chance.below(2)) [a.stack, b.stack] = [b.stack, a.stack];
      else a.stack = [...(a.stack ?? [])].reverse();
    },
  },
  {
    name: 'an examination',
    to: (file, chance) => {
      const item = itemOf(file, chance, 'hoist', 'grid', 'shackle', 'sling', 'box', 'cart');
      if (!item) return;
      const on = addDays(file.tour.prepFrom, -chance.below(700));
      if (chance.below(4) === 0) item.examinations = [];
      else item.examinations = [...(item.examinations ?? []), { on, outcome: chance.one(['pass', 'fail']) }];
      if (chance.below(3) === 0) item.events = [{ on: addDays(on, chance.below(400)), what: 'shock load' }];
    },
  },
  {
    name: 'a hire',
    to: (file, chance) => {
      const item = itemOf(file, chance);
      if (item)
        item.hire = { from: addDays(file.tour.prepFrom, chance.below(20) - 5), to: addDays(file.tour.returnTo, chance.below(9) - 5) };
    },
  },
  {
    name: 'promises',
    to: (file, chance) => {
      const kind = chance.one(['cart', 'box', 'truck', 'hoist', 'case']);
      const from = addDays(file.tour.prepFrom, chance.below(15) - 3);
      for (const item of file.items)
        if (item.kind === kind && chance.below(4) === 0 && item.count === undefined)
          file.bookings.push({ item: item.id, from, to: addDays(from, chance.below(9)), tour: 'Town Fair, one day' });
    },
  },
];

const toDesign: Damage[] = [
  {
    name: 'a box pinned',
    to: (file, chance) => {
      const own = hang(file, chance);
      const place = chance.one(own?.boxes ?? []);
      const box = chance.one(
        file.items.filter((each: Written) => each.kind === 'box' && (chance.below(9) === 0 || each.model === place?.model)),
      );
      if (place && box) place.serial = box.id;
    },
  },
  {
    name: 'many boxes pinned',
    to: (file, chance) => {
      const own = hang(file, chance);
      const free = file.items.filter((each: Written) => each.kind === 'box');
      for (const place of own?.boxes ?? []) {
        const at = free.findIndex((each: Written) => each.model === place.model && chance.below(3) > 0);
        if (at >= 0) place.serial = free.splice(at, 1)[0].id;
      }
    },
  },
  {
    name: 'a hole',
    to: (file, chance) => {
      const own = hang(file, chance);
      const pick = chance.one(own?.picks ?? []);
      const grid = file.catalogue.grids.find((each: Written) => each.model === own?.grid);
      if (pick && grid) pick.hole = chance.one(grid.holes).hole;
    },
  },
  {
    name: 'a pick fewer or more',
    to: (file, chance) => {
      const own = hang(file, chance);
      if (!own) return;
      if (chance.below(2)) own.picks.pop();
      else if (own.picks[0]) own.picks.push({ ...own.picks[0], hole: 'H' });
      if (own.picks.length === 1 && chance.below(2)) delete own.tiltDownDeg;
    },
  },
  {
    name: 'a tilt',
    to: (file, chance) => {
      const own = hang(file, chance);
      if (own) own.tiltDownDeg = chance.one([-60, -12, 0, 12, 45, 89, 90]);
    },
  },
  {
    name: 'boxes fewer or more',
    to: (file, chance) => {
      const own = hang(file, chance);
      if (!own) return;
      if (chance.below(2)) own.boxes = own.boxes.slice(0, chance.below(own.boxes.length + 1));
      else own.boxes = [...own.boxes, ...own.boxes.slice(0, chance.below(9))];
    },
  },
  {
    name: 'a model at a place',
    to: (file, chance) => {
      const place = chance.one(hang(file, chance)?.boxes ?? []);
      if (place) place.model = chance.one(file.catalogue.boxes).model;
    },
  },
  {
    name: 'a hang gone or twice',
    to: (file, chance) => {
      const own = show(file, chance);
      if (!own) return;
      if (chance.below(2)) own.hangs.splice(chance.below(own.hangs.length), 1);
      else if (own.hangs[0]) own.hangs.push({ ...structuredClone(own.hangs.at(-1)), id: 'Delay 1' });
    },
  },
  {
    name: 'part load and order',
    to: (file, chance) => {
      const own = hang(file, chance);
      if (own)
        Object.assign(own, {
          partLoad: chance.one(['top', 'bottom']),
          goesUp: 1 + chance.below(4),
          loom: chance.below(2) ? own.loom : undefined,
        });
    },
  },
  {
    name: 'serials of grid and hoist',
    to: (file, chance) => {
      const own = hang(file, chance);
      if (!own) return;
      own.gridSerial = itemOf(file, chance, 'grid')?.id;
      if (own.picks[0]) own.picks[0].hoistSerial = itemOf(file, chance, 'hoist')?.id;
    },
  },
];

const toTour: Damage[] = [
  {
    name: 'the dates',
    to: (file, chance) => {
      file.tour.prepFrom = addDays(file.tour.prepFrom, chance.below(40) - 20);
      file.tour.returnTo = addDays(file.tour.returnTo, chance.below(500) - 10);
    },
  },
  {
    name: 'a show’s dates',
    to: (file, chance) => {
      const own = show(file, chance);
      const days = chance.below(9) - 4;
      if (own) Object.assign(own, { from: addDays(own.from, days), to: addDays(own.to, days + chance.below(3) - 1) });
    },
  },
  {
    name: 'visit days',
    to: (file, chance) => {
      file.tour.visitDays = Array.from({ length: chance.below(4) }, () => addDays(file.tour.prepFrom, chance.below(30) - 9));
    },
  },
  { name: 'no truck', to: (file, chance) => void (file.tour.trucks = chance.below(2) ? [] : file.tour.trucks.slice(1)) },
  {
    name: 'a truck’s size',
    to: (file, chance) => {
      const truck = chance.one(file.catalogue.trucks);
      const field = chance.one([
        'innerLengthMm',
        'innerWidthMm',
        'innerHeightMm',
        'doorHeightMm',
        'payloadKg',
        'maxGrossKg',
        'maxSideOffsetMm',
      ]);
      if (truck && field) truck[field] = Math.round((truck[field] ?? 1000) * (0.2 + chance.below(100) / 100));
    },
  },
  { name: 'freight', to: (file, chance) => void (file.tour.freight = file.tour.freight.filter(() => chance.below(3) > 0)) },
  {
    name: 'a spares line',
    to: (file, chance) => {
      const line = chance.one(file.tour.spares);
      if (line) Object.assign(line, chance.below(2) ? { level: 0.9999 } : { lossPerUse: 1, prior: undefined, counted: undefined });
    },
  },
  {
    name: 'a load rule',
    to: (file, chance) => {
      const rule = chance.one(file.loadRules);
      if (rule) rule.usableShareWithPersonsBelow = chance.one([0.01, 0.5, 1]);
    },
  },
  {
    name: 'a figure of a model',
    to: (file, chance) => {
      const model = chance.one(file.catalogue[chance.one(['boxes', 'grids', 'carts', 'hoists', 'cases', 'shackles', 'slings'])]);
      const field = chance.one(Object.keys(model ?? {}).filter((key) => typeof model[key] === 'number'));
      if (model && field) model[field] = chance.one([model[field] * 3, model[field] / 3, 0, 1e-9, Math.round(model[field] * 1.1)]);
    },
  },
  {
    name: 'what a cart carries',
    to: (file, chance) => {
      const cart = chance.one(file.catalogue.carts);
      if (!cart) return;
      if (chance.below(2)) cart.carries = [chance.one(file.catalogue.boxes).model];
      else cart.capacity = 1 + chance.below(6);
      while (cart.heightsMm.length <= cart.capacity) cart.heightsMm.push(cart.heightsMm.at(-1) + 300);
    },
  },
];

const damages: readonly Damage[] = [...toItems, ...toDesign, ...toTour];

/** The written file with one to five damages of seed `seed`, and their names. Equal seed, equal damage. */
export function damagedTour(written: object, seed: number): { readonly file: unknown; readonly done: readonly string[] } {
  const random = seededRandom(seed);
  const below = (most: number) => Math.floor(random() * most);
  const chance: Chance = { below, one: (list) => list[below(list.length)] };
  const file = structuredClone(written);
  const done: string[] = [];
  for (let left = 1 + below(5); left > 0; left--) {
    const damage: Damage = chance.one(damages);
    damage.to(file, chance);
    done.push(damage.name);
  }
  return { file, done };
}
