/** What sentences are made of: figures with their units, names, lists, what was compared. */
export { cannotHang, hangRemarks } from './cannot-hang.js';
export { belowPublished, comparisons, factors, parts, stages } from './compared.js';
export { check, dueCauses, interval, judged } from './due-causes.js';
export { figure } from './figures.js';
export * from './format.js';
export { breaches, loadBounds } from './load-breaches.js';
export { trimMarks } from './trim-marks.js';
export { about, axles, subjects } from './subjects.js';
