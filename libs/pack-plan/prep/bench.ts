import type { FaultFound } from '../return/index.js';

/** What is looked at on the bench before a box is stacked, and of what kind a fault of it is (common practice of the trade, no published source). */
export const benchChecks = {
  sound: 'sound',
  drivers: 'sound',
  connectors: 'sound',
  pins: 'rigging',
  links: 'rigging',
  handles: 'rigging',
  label: 'looks',
} as const satisfies Readonly<Record<string, FaultFound['kind']>>;

export type BenchCheck = keyof typeof benchChecks;

/** What failed checks lead to, the gravest first: null where all passed. A label that cannot be read keeps no box at home. */
export function afterBench(failed: readonly BenchCheck[]): Pick<FaultFound, 'kind' | 'then'> | null {
  const kinds = new Set(failed.map((each) => benchChecks[each]));
  if (kinds.has('rigging')) return { kind: 'rigging', then: 'out' };
  if (kinds.has('sound')) return { kind: 'sound', then: 'out' };
  return kinds.has('looks') ? { kind: 'looks', then: 'flies' } : null;
}
