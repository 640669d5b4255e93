export * from './catalogue.js';
export * from './item.js';
export * from './tour.js';
export * from './tour-file.js';
