/** What is read on the floor: codes as they are typed or scanned, what they stand for, and whether a cart is right, box by box, in any order. */
export type { FloorCommand } from './floor-command.js';
export { commandCodes, commandOf } from './floor-command.js';
export { keyReader } from './key-reader.js';
export type { CartProgress, CartRead, HouseAnswer } from './read-cart.js';
export { progressOf, readCode } from './read-cart.js';
export { seenCodes } from './seen-code.js';
export type { CodeMatch } from './typed-code.js';
export { matchCode, textOfCode } from './typed-code.js';
