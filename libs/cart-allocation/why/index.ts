/** What an answer has to say for itself: why each move is made, and which moves a crew may make at the same time. */
export { groupMoves, moveReasons, naiveBoxMoves } from './describe-moves.js';
