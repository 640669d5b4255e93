/** What a truck, a piece, a kept placement and an answer are: the words that every other room uses. Knows none of them. */
export * from './axle-loads.js';
export * from './fits.js';
export * from './kept.js';
export * from './left-over.js';
export * from './pack-answer.js';
export * from './truck-case.js';
export * from './violation.js';
export * from './work.js';
