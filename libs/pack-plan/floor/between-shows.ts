import type { CartLoad, PackPlan, SolveLimits } from '../contract/index.js';
import { type BoxFacts, type WorkList, workListOf } from './work-list.js';

/** What happens to the carts between two shows of a tour. */
export interface BetweenShows {
  /** Loads that fly again on the same cart with the same boxes. */
  readonly rollOn: readonly { readonly cart: string; readonly before: string; readonly after: string }[];
  /** Carts of the show before that nobody flies at the next one. */
  readonly stayOnTruck: readonly { readonly cart: string; readonly load: string }[];
  /** Loads that are built otherwise, with the reason. */
  readonly restacked: readonly { readonly load: string; readonly cart: string | null; readonly why: string }[];
  /** The box moves from the floor that the show before leaves. */
  readonly work: Pick<WorkList, 'moves' | 'bound' | 'sentence' | 'status'>;
}

const serialsOf = (load: CartLoad): string[] => load.boxes.flatMap((box) => (box.serial === null ? [] : [box.serial]));

export function betweenShows(
  before: PackPlan,
  after: PackPlan,
  facts: BoxFacts,
  carriesOf: (cart: string) => readonly string[] | undefined,
  limits: SolveLimits,
): BetweenShows {
  const floor = {
    carts: before.carts.floorAfter.carts.map((each) => ({ ...each, carries: carriesOf(each.cart) })),
    loose: before.carts.floorAfter.loose,
  };
  const standing = new Map(floor.carts.map((each) => [each.boxes.join('\n'), each.cart]));
  const earlier = before.carts.loads.filter((load) => load.cart !== null);
  const rollOn: { cart: string; before: string; after: string }[] = [];
  const restacked: { load: string; cart: string | null; why: string }[] = [];
  for (const load of after.carts.loads) {
    const cart = standing.get(serialsOf(load).join('\n'));
    const same = cart === undefined ? undefined : earlier.find((each) => each.cart === cart);
    if (same) rollOn.push({ cart: cart!, before: same.id, after: load.id });
    else if (cart === undefined) restacked.push({ load: load.id, cart: load.cart, why: whyRestacked(load, earlier) });
  }
  const flying = new Set([...rollOn.map((each) => each.cart), ...after.carts.loads.map((load) => load.cart)]);
  const {
    moves,
    bound,
    status,
    sentence: why,
  } = workListOf(after, floor, facts, new Set(after.carts.moves.map((move) => move.number)), limits);
  const proof = moves.length <= bound ? '; no shorter list exists' : `; at least ${bound} are needed`;
  const sentence = status === 'cannot' ? why : `${moves.length} box moves from the floor that the show before leaves${proof}.`;
  return {
    rollOn,
    stayOnTruck: earlier.filter((load) => !flying.has(load.cart)).map((load) => ({ cart: load.cart!, load: load.id })),
    restacked,
    work: { moves, bound, sentence, status },
  };
}

function whyRestacked(load: CartLoad, earlier: readonly CartLoad[]): string {
  const models = (each: CartLoad) => each.boxes.map((box) => box.model).join();
  const same = earlier.find((each) => each.id === load.id);
  if (!same) return `the show before has no load ${load.id}`;
  if (models(same) !== models(load))
    return `the design wants ${load.boxes.map((box) => box.model).join(', ')} here, the show before ${same.boxes.map((box) => box.model).join(', ')}`;
  const other = load.boxes.filter((box, index) => box.serial !== same.boxes[index]?.serial);
  return `other boxes in it: ${other.map((box) => box.serial ?? 'none').join(', ')}`;
}
