/** The shortest load of a few pieces on the floor of one truck, rows or not, proved by looking at all there are: what rows are held against. */
export * from './solve-small.js';
