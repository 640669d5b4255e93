/** Everything that has to agree across a file of the right shape: names that are on file, splays that a model allows, dates in order. */
export { checkKit, checkTourFile, readTourFile } from './read-tour-file.js';
