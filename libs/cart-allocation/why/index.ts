/**
 * What an answer has to say for itself: why each move is made, which moves a crew may make at the same time, and why this box and this cart, and not
 * another (barred, and asked again).
 */
export { type MoveReason, groupMoves, moveReasons, naiveBoxMoves } from './describe-moves.js';
export { type AnswerInHand, type Why, type WhyNotAnother, type Wish, whyThisBox, whyThisCart } from './why-this-box.js';
