import type { PlainDate } from '#kernel';
import type { Numbers, Subjects } from '../subject/index.js';

/** The shape of every finding: a code, what it is about by name (the first is the main thing), figures with their units, a day. */
export interface Of<Code extends string, S extends Subjects, N extends Numbers = Record<never, never>> {
  readonly code: Code;
  readonly subjects: S;
  readonly numbers: N;
  readonly date: PlainDate | null;
}
