import type { AdapterFrame, RiggingSystem } from './rigging-system.js';

/** The frame that joins these two models, upper and lower; undefined where they link to one another by themselves. */
export const adapterBetween = (systems: readonly RiggingSystem[], upper: string, lower: string): AdapterFrame | undefined =>
  systems.flatMap((system) => system.adapters ?? []).find((frame) => frame.joins[0] === upper && frame.joins[1] === lower);
