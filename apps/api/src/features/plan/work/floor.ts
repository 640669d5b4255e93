import type { BoxFacts, Floor, PackPlan } from '#pack-plan';
import type { TourFile } from '#tour-file';

/** The floor of the register as far as the plan knows its carts and boxes. */
export function floorOf(file: TourFile, plan: PackPlan): Floor {
  const items = new Map(file.items.map((item) => [item.id, item]));
  const carts = plan.carts.floorBefore.carts.map(({ cart, capacity, givesOnly }) => ({
    cart,
    capacity,
    ...(givesOnly ? { givesOnly } : {}),
    boxes: [...(items.get(cart)?.stack ?? [])],
    carries: carriesOf(file, cart),
  }));
  const onCarts = new Set(file.items.flatMap((item) => (item.kind === 'cart' ? (item.stack ?? []) : [])));
  const loose = file.items.filter(
    (item) => item.kind === 'box' && !onCarts.has(item.id) && item.in === undefined && item.depot === plan.tour.depot,
  );
  return { carts, loose: loose.map((item) => item.id) };
}

export function carriesOf(file: TourFile, cart: string): readonly string[] | undefined {
  const model = file.items.find((item) => item.id === cart)?.model;
  return file.catalogue.carts.find((each) => each.model === model)?.carries;
}

/** What the register says of boxes. */
export function factsOf(file: TourFile): BoxFacts {
  const items = new Map(file.items.map((item) => [item.id, item]));
  return {
    model: (serial) => items.get(serial)?.model ?? serial,
    against: (serial) => {
      const item = items.get(serial);
      if (!item) return { code: 'not-on-file' };
      return item.state === 'in service' ? null : { code: 'state', state: item.state, remark: item.reason ?? null };
    },
  };
}
