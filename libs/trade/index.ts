/** The words of the trade as data: ids, subjects, findings, reasons and refusals with their figures. Every room may know it; it knows the kernel. */
export * from './comparison/index.js';
export * from './finding/index.js';
export * from './place/index.js';
export * from './reason/index.js';
export * from './record/index.js';
export * from './subject/index.js';
