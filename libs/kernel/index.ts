export * from './bad-input.js';
export * from './canonical-json.js';
export * from './integer-program.js';
export * from './invariant.js';
export * from './plain-date.js';
export * from './result.js';
export * from './seeded-random.js';
export * from './standard-gravity.js';
