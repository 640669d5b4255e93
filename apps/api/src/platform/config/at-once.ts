/** How many requests may be under way at once. */
export interface AtOnce {
  readonly all: number;
  /** Of one person. */
  readonly person: number;
  /** Of all who are not signed in, together: they never fill the house. */
  readonly strangers: number;
}
