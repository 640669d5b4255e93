import { BlockChoice } from './block-choice.js';
import { FreeSpaces } from './free-spaces.js';
import type { Given } from './given.js';
import { Packing } from './packing.js';
import type { Settled } from './settle.js';

/** A packing with what its greedy completion fills; a child is its parent until it is chosen for the next level. */
interface Child {
  readonly parent: Packing;
  readonly space: number;
  readonly block: number;
  readonly volume: number;
}

/** Beam search over packings; each child is judged by completing it greedily. Keeps the fullest packing that it ever saw. */
export class BeamSearch {
  readonly best: Packing;
  /** The best load that keeps the limits of the whole, where there are such. */
  settled: Settled = { placements: [], volume: 0 };
  completions = 0;
  private readonly root: Packing;
  private readonly trial: Packing;
  private readonly choice: BlockChoice;
  private readonly free: FreeSpaces;
  private readonly rootVolume: number;
  /** What completing a packing came to, by the packing's key: passes meet many packings again. */
  private readonly judged = new Map<number, number>();
  /** How many blocks `choice` found for the last space. */
  private chosen = 0;
  private asked = 0;
  private wasLate = false;

  constructor(
    private readonly given: Given,
    private readonly isLate: () => boolean,
    private readonly workLimit: number,
    private readonly settle?: (packing: Packing, above: number) => Settled | undefined,
  ) {
    this.choice = new BlockChoice(given);
    this.free = new FreeSpaces(given);
    this.root = new Packing(given).blockOff(this.free);
    this.trial = new Packing(given);
    this.best = new Packing(given);
    this.rootVolume = this.complete(this.trial.become(this.root));
  }

  isOver(): boolean {
    if (this.completions >= this.workLimit || this.bestVolume >= this.given.mostVolume) return true;
    // The clock costs more than a small completion: it is not read each time.
    if (this.asked++ % 8 === 0) this.wasLate = this.isLate();
    return this.wasLate;
  }

  private get bestVolume(): number {
    return this.settle ? this.settled.volume : this.best.volume;
  }

  /** The clock cut the search short. */
  get isCut(): boolean {
    return this.wasLate;
  }

  /** One beam from the empty container; false when it looked at everything there is. */
  pass(effort: number): boolean {
    const beams = Math.max(1, Math.round(effort));
    const levelSize = Math.max(2, Math.round(effort * effort));
    let level = [{ packing: new Packing(this.given).become(this.root), volume: this.rootVolume }];
    let wasNarrow = false;
    while (level.length > 0) {
      const width = Math.max(1, Math.round(levelSize / level.length));
      const children: Child[] = [];
      for (const { packing, volume } of level) {
        const space = this.nextOptions(packing, width);
        if (space < 0) continue;
        const count = this.chosen;
        wasNarrow ||= count === width;
        const options = this.choice.best.slice(0, count);
        // The completion goes on with the best block itself: what the packing came to, its first child comes to.
        children.push({ parent: packing, space, block: options[0]!, volume });
        for (let index = 1; index < count; index++) {
          if (this.isOver()) return true;
          const block = options[index]!;
          children.push({ parent: packing, space, block, volume: this.judge(packing, space, block) });
        }
      }
      children.sort((a, b) => b.volume - a.volume);
      level = this.keep(children, beams);
    }
    return wasNarrow;
  }

  private keep(children: readonly Child[], beams: number): { packing: Packing; volume: number }[] {
    const kept: { packing: Packing; volume: number }[] = [];
    const seen = new Set<number>();
    for (const { parent, space, block, volume } of children) {
      if (kept.length === beams) break;
      if (seen.has(volume)) continue;
      seen.add(volume);
      kept.push({ packing: new Packing(this.given).become(parent).place(space, block, this.free), volume });
    }
    return kept;
  }

  private judge(packing: Packing, space: number, block: number): number {
    const key = packing.keyWith(space, block);
    const known = this.judged.get(key);
    if (known !== undefined) return known;
    const volume = this.complete(this.trial.become(packing).place(space, block, this.free));
    this.judged.set(key, volume);
    return volume;
  }

  /** Fills on with the best block in the next space until nothing fits. */
  private complete(packing: Packing): number {
    this.completions++;
    for (let space = this.nextOptions(packing, 1); space >= 0; space = this.nextOptions(packing, 1))
      packing.place(space, this.choice.best[0]!, this.free);
    if (packing.volume > this.best.volume) this.best.become(packing);
    if (this.settle && packing.volume > this.settled.volume) this.settled = this.settle(packing, this.settled.volume) ?? this.settled;
    return packing.volume;
  }

  /** Drops spaces that take nothing; the next one that takes something, its best blocks in `choice`, or -1. */
  private nextOptions(packing: Packing, width: number): number {
    for (let space = packing.nextSpace(); space >= 0; space = packing.nextSpace()) {
      this.chosen = this.choice.choose(packing, space, width);
      if (this.chosen > 0) return space;
      packing.dropSpace(space);
    }
    return -1;
  }
}
