/** What a plan uses, with where the register has it. */
export interface Used {
  readonly id: string;
  readonly kind: string;
  readonly model: string;
  /** Of a batch: how many pieces the plan takes. */
  readonly count: number | null;
  readonly depot: string;
  /** The case that it lies in, or the cart that it stands on. */
  readonly inside: string | null;
}

export interface PickPlace {
  readonly depot: string;
  readonly inside: string | null;
  readonly items: readonly Used[];
}

/** Place by place: first what stands by itself in a depot, then case by case and cart by cart. What lies in something goes with it. */
export function pickList(used: readonly Used[]): readonly PickPlace[] {
  const keyOf = ({ depot, inside }: Used) => JSON.stringify([depot, inside]);
  const places = new Map<string, Used[]>();
  for (const each of used) places.set(keyOf(each), [...(places.get(keyOf(each)) ?? []), each]);
  const compare = (one: string, other: string) => (one < other ? -1 : one > other ? 1 : 0);
  return [...places.values()]
    .map(
      (items): PickPlace => ({
        depot: items[0]?.depot ?? '',
        inside: items[0]?.inside ?? null,
        items: [...items].sort((a, b) => compare(a.kind, b.kind) || compare(a.id, b.id)),
      }),
    )
    .sort(
      (a, b) =>
        compare(a.depot, b.depot) || Number(a.inside !== null) - Number(b.inside !== null) || compare(a.inside ?? '', b.inside ?? ''),
    );
}

/** How much of what leaves, to be read out: pieces by kind and model. */
export function leavesTheHouse(
  used: readonly Pick<Used, 'kind' | 'model' | 'count'>[],
): readonly { readonly kind: string; readonly model: string; readonly pieces: number }[] {
  const sums = new Map<string, { kind: string; model: string; pieces: number }>();
  for (const { kind, model, count } of used) {
    const key = JSON.stringify([kind, model]);
    sums.set(key, { kind, model, pieces: (sums.get(key)?.pieces ?? 0) + (count ?? 1) });
  }
  return [...sums.values()].sort((a, b) => (a.kind === b.kind ? (a.model < b.model ? -1 : 1) : a.kind < b.kind ? -1 : 1));
}
