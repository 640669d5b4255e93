import type { HardwareLine, HardwareResult } from '../contract/index.js';

/** What the hardware of every plan says, however long ago it was made. */
type KeptLine = Pick<HardwareLine, 'key' | 'item' | 'model' | 'size' | 'fitted' | 'withBox' | 'withCart' | 'loose' | 'trunks' | 'spares'> &
  Pick<HardwareLine, 'levelReached' | 'onHand' | 'missing' | 'unit' | 'working'> &
  Partial<HardwareLine>;
export type KeptHardware = Pick<HardwareResult, 'chosen' | 'caution'> &
  Partial<Omit<HardwareResult, 'lines'>> & { readonly lines: readonly KeptLine[]; readonly trunkLevel?: number | null };

/** A kept plan in the shape of a new one: what it did not say yet is left open, so that a revision prints years later. */
export function wholeHardware(kept: KeptHardware): HardwareResult {
  const level = kept.trunkLevel ?? null;
  const sentence = 'This plan was made when no level was chosen for the whole trunk.';
  return {
    chains: [],
    keptWithBoxes: [],
    trunk: { wanted: null, least: 'mass', level, weight: 0, bound: 0, equalShareWeight: 0, status: 'feasible', sentence },
    ...kept,
    chosen: kept.chosen.map((each) => ({ ...each, fact: each.fact ?? null })),
    ...(kept.chains && { chains: kept.chains.map((each) => ({ ...each, hangName: each.hangName ?? each.hang })) }),
    lines: kept.lines.map((line) => ({
      staysInBox: 0,
      difference: 0,
      takenFrom: [],
      carriers: [],
      levelWanted: null,
      pooling: null,
      learned: null,
      weightEach: null,
      keptAtHome: 0,
      shortOn: null,
      outOfUse: [],
      ...line,
    })),
  };
}
