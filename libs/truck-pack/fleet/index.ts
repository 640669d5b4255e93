/** Several trucks: which pieces go to which, fewest trucks first, each truck packed by whatever packs one. */
export * from './fleet-search.js';
export { mostThatCould, type Part, quickLoad } from './quick-load.js';
