import type { TrimMark } from '#trade';

/** What a trim height is measured to. */
export const trimMarks: Record<TrimMark, string> = { 'bottom edge': 'the bottom edge', grid: 'the grid', top: 'the top of the grid' };
