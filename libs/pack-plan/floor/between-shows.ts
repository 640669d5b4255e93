import type { RestackReason } from '#trade';
import { type Words, english, tell } from '#words';
import type { CartLoad, PackPlan, SolveLimits } from '../contract/index.js';
import { type BoxFacts, type Floor, type WorkList, workListOf } from './work-list.js';

/** What happens to the carts between two shows of a tour. */
export interface BetweenShows {
  /** Loads that fly again on the same cart with the same boxes. */
  readonly rollOn: readonly { readonly cart: string; readonly before: string; readonly after: string }[];
  /** Carts of the show before that nobody flies at the next one. */
  readonly stayOnTruck: readonly { readonly cart: string; readonly load: string }[];
  /** Loads that are built otherwise, with the reason. */
  readonly restacked: readonly {
    readonly load: string;
    readonly cart: string | null;
    readonly why: string;
    readonly fact: RestackReason;
  }[];
  /** The box moves from the floor that the show before leaves. */
  readonly work: Pick<WorkList, 'moves' | 'bound' | 'sentence' | 'status' | 'fact'>;
}

const serialsOf = (load: CartLoad): string[] => load.boxes.flatMap((box) => (box.serial === null ? [] : [box.serial]));

export function betweenShows(
  before: PackPlan,
  after: PackPlan,
  facts: BoxFacts,
  carriesOf: (cart: string) => readonly string[] | undefined,
  limits: SolveLimits,
  words: Words = english,
): BetweenShows {
  const floor = {
    carts: before.carts.floorAfter.carts.map((each) => ({ ...each, carries: carriesOf(each.cart) })),
    loose: before.carts.floorAfter.loose,
  };
  const standing = new Map(floor.carts.map((each) => [each.boxes.join('\n'), each.cart]));
  const earlier = before.carts.loads.filter((load) => load.cart !== null);
  const rollOn: { cart: string; before: string; after: string }[] = [];
  const restacked: BetweenShows['restacked'][number][] = [];
  for (const load of after.carts.loads) {
    const cart = standing.get(serialsOf(load).join('\n'));
    const same = cart === undefined ? undefined : earlier.find((each) => each.cart === cart);
    if (same) rollOn.push({ cart: cart!, before: same.id, after: load.id });
    else if (cart === undefined) {
      const fact = whyRestacked(load, earlier);
      restacked.push({ load: load.id, cart: load.cart, why: tell(words.restacked, fact), fact });
    }
  }
  const flying = new Set([...rollOn.map((each) => each.cart), ...after.carts.loads.map((load) => load.cart)]);
  return {
    rollOn,
    stayOnTruck: earlier.filter((load) => !flying.has(load.cart)).map((load) => ({ cart: load.cart!, load: load.id })),
    restacked,
    work: workBetween(after, floor, facts, limits, words),
  };
}

/** The shortest list from the floor that the show before leaves: no move of the plan's own list counts as left. */
function workBetween(after: PackPlan, floor: Floor, facts: BoxFacts, limits: SolveLimits, words: Words): BetweenShows['work'] {
  const { moves, bound, status, sentence, fact } = workListOf(
    after,
    floor,
    facts,
    new Set(after.carts.moves.map((move) => move.number)),
    limits,
    words,
  );
  if (status === 'cannot') return { moves, bound, sentence, status, fact };
  const between = { code: 'between-shows' as const, moves: moves.length, bound };
  return { moves, bound, sentence: tell(words.work, between), status, fact: between };
}

function whyRestacked(load: CartLoad, earlier: readonly CartLoad[]): RestackReason {
  const models = (each: CartLoad) => each.boxes.map((box) => box.model);
  const same = earlier.find((each) => each.id === load.id);
  if (!same) return { code: 'new-load', load: load.id };
  if (models(same).join() !== models(load).join()) return { code: 'other-models', wanted: models(load), before: models(same) };
  const other = load.boxes.filter((box, index) => box.serial !== same.boxes[index]?.serial);
  return { code: 'other-boxes', boxes: other.map((box) => box.serial) };
}
