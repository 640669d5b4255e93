/** Where bound and plan do not meet: a search that either finds a shorter plan or proves that there is none. */
export { searchExactly } from './exact-search.js';
