import { type ContainerCase, orientationsOf } from './container-case.js';

/** Tells at once which free cuboids take no box of any kind; large containers in steps, then some that take none are not told. */
export class Room {
  private readonly step: number;
  private readonly across: number;
  /** By extent along x and y: the least height of a box that is no longer and no wider. */
  private readonly height: Int32Array;

  constructor({ length, width, boxes }: ContainerCase) {
    this.step = Math.ceil(Math.max(length, width) / 1024);
    const along = Math.floor(length / this.step) + 1;
    this.across = Math.floor(width / this.step) + 1;
    this.height = new Int32Array(along * this.across).fill(1 << 30);
    for (const [dx, dy, dz] of boxes.flatMap(orientationsOf)) {
      if (dx > length || dy > width) continue;
      const at = Math.floor(dx / this.step) * this.across + Math.floor(dy / this.step);
      this.height[at] = Math.min(this.height[at]!, dz);
    }
    for (let i = 0; i < along; i++)
      for (let j = 0; j < this.across; j++) {
        const at = i * this.across + j;
        const shorter = i > 0 ? this.height[at - this.across]! : 1 << 30;
        const narrower = j > 0 ? this.height[at - 1]! : 1 << 30;
        this.height[at] = Math.min(this.height[at]!, shorter, narrower);
      }
  }

  takes(lx: number, ly: number, lz: number): boolean {
    if (this.step === 1) return lz >= this.height[lx * this.across + ly]!;
    return lz >= this.height[Math.floor(lx / this.step) * this.across + Math.floor(ly / this.step)]!;
  }
}
