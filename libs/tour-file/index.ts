export * from './catalogue.js';
export { modelsOfKind } from './check-items.js';
export * from './item.js';
export * from './read-tour-file.js';
export * from './shift-dates.js';
export * from './tour.js';
export * from './tour-file.js';
export * from './whole-hang.js';
