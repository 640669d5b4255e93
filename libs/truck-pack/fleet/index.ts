/** Several trucks: which pieces go to which, fewest trucks first, each truck packed by whatever packs one. */
export * from './fleet-search.js';
export { firstThatCould, type Part, quickLoad, repeatedFrom } from './quick-load.js';
export { likeBesideLike } from './waiting.js';
