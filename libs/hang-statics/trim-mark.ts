import type { Point } from './hang-geometry.js';

interface Drawn {
  readonly grid: readonly Point[];
  readonly boxes: readonly { readonly corners: readonly Point[] }[];
  readonly adapters: readonly { readonly corners: readonly Point[] }[];
}

/** The mark that a trim height is measured to, in the side plane: the grid is marked at its front pivot, where it meets the top box. */
export function trimMarkZMm(outline: Drawn, trimTo: 'bottom edge' | 'grid' | 'top'): number {
  if (trimTo === 'grid') return 0;
  return trimTo === 'top' ? Math.max(...outline.grid.map((each) => each.zMm)) : lowestZMm(outline);
}

/** The lowest corner of anything that hangs. */
export const lowestZMm = ({ grid, boxes, adapters }: Drawn): number =>
  Math.min(...[grid, ...[...boxes, ...adapters].map((each) => each.corners)].flat().map((each) => each.zMm));
