/** What no load can beat, proven: fewest trucks, least length, and the prices of floor that the search for rows is judged by. */
export * from './floor-bound.js';
export * from './most-payload.js';
export * from './pack-bound.js';
export * from './width-prices.js';
