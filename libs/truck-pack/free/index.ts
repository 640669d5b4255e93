/** Loads without rows, and loads that leave something behind: for freight that rows do not hold. */
export * from './general-search.js';
export * from './leave-out.js';
export * from './one-truck-free.js';
