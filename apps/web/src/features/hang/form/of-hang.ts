import type { Hang } from '#tour-file';
import type { Kit } from './kit.js';

/** Where a part of the form reads and writes its hang: the name of its fields begins with `at`. */
export interface OfHang {
  readonly at: `hangs.${number}`;
  readonly hang: Hang;
  readonly kit: Kit;
  /** For what changes many fields at once. */
  readonly onChange: (hang: Hang) => void;
}
