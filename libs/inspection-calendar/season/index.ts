/** Visits of examiners over a season and all tours: where every item is, which days serve, the fewest of them, and what none of them saves. */
export * from './season-case.js';
export { type ItemPlace, placeOn } from './place-on.js';
export {
  type NotSaved,
  type SeasonAnswer,
  type SeasonCount,
  type SeasonVisit,
  type SeenItem,
  type SeenItems,
  solveSeason,
} from './solve-season.js';
export { verifySeason } from './verify-season.js';
export { ofCheck } from './of-check.js';
