/** Token of the words in which everything is said; English unless the app is told otherwise. */
export const WORDS = Symbol('words');
