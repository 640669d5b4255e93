/**
 * What a fault is of decides what follows. Rigging: out of service until it is examined and released. Sound: out, or it flies at the bottom of a hang.
 * Looks: repaired at home, flies meanwhile.
 */
export const faultKinds = ['rigging', 'sound', 'looks'] as const;
export type FaultKind = (typeof faultKinds)[number];

/** What becomes of it. */
export const faultStates = { out: 'out of service', bottom: 'at the bottom of a hang', flies: 'flies meanwhile' } as const;

/** A fault as it was told. */
export interface FaultFound {
  readonly kind: FaultKind;
  readonly what: string;
  readonly then: keyof typeof faultStates;
  /** Of a batch: how many pieces. */
  readonly pieces: number | null;
}

export interface FaultRecord extends FaultFound {
  readonly item: string;
  readonly id: number;
  readonly moment: string;
  readonly by: string;
}

/** Faults with which an item flies on and that nothing has answered yet: a bench test that passed later answers them. What is out has its state. */
export function openFaults(
  faults: readonly FaultRecord[],
  tests: readonly { readonly item: string; readonly id: number; readonly passed: boolean }[],
): readonly FaultRecord[] {
  return faults.filter(({ item, id, then }) => then !== 'out' && !tests.some((test) => test.item === item && test.passed && test.id > id));
}
