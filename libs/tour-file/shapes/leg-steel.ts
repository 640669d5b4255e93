import type { BridleSetting } from './tour.js';

/** The steel of each leg of a bridle: its own where it names any, otherwise that of the bridle, which every leg has for itself. */
export const legSteel = ({
  legs,
  shackles,
  slings,
}: BridleSetting): { readonly shackles: readonly string[]; readonly slings: readonly string[] }[] =>
  legs.map((leg) => ({ shackles: leg.shackles ?? shackles, slings: leg.slings ?? slings }));
