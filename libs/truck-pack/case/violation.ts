/** A rule that a load breaks: what, which piece or truck, and a sentence about it. */
export interface Violation {
  readonly code: string;
  readonly subject: string;
  readonly sentence: string;
}
