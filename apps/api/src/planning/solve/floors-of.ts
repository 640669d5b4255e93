import type { TourFile } from '#tour-file';

/** Where every box stands: what a list of box moves starts from. Fingerprints of plans leave it out, so that moves do not make them stale. */
export const floorsOf = ({ items }: TourFile): readonly (readonly [string, readonly string[]])[] =>
  items.filter((each) => each.kind === 'cart').map(({ id, stack }) => [id, stack ?? []] as const);
