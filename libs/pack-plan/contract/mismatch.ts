/** Where an independent check came to something else than an engine or the plan says: the plan cannot be released. */
export interface Mismatch {
  /** The check, for example "statics" or "box moves". */
  readonly check: string;
  /** What it is about: a hang, a cart load, an item, a line. */
  readonly subject: string;
  /** What the check found, with its figures. */
  readonly found: string;
}

/** Mismatches beside a result; the field is left out where there is none. */
export interface Checked {
  readonly mismatches?: readonly Mismatch[];
}

/** The field of `Checked`: nothing where every check agrees. */
export const checkedBy = (mismatches: readonly Mismatch[]): Checked => (mismatches.length === 0 ? {} : { mismatches });

/** What a verifier of an engine says, as mismatches of one check about one subject. */
export const mismatchesOf = (check: string, subject: string, wrong: readonly string[]): Mismatch[] =>
  wrong.map((found) => ({ check, subject, found }));
