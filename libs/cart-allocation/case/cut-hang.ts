/** One cart load of a hang: consecutive positions, the first at the top of the cart and highest in the air. */
export interface CutLoad {
  readonly positions: readonly number[];
}

export interface CutOptions {
  readonly capacity: number;
  readonly partLoad: 'bottom' | 'top';
  readonly mayShare: (model: string, other: string) => boolean;
}

/** Cuts a hang into the fewest cart loads; where one is not full it is the bottom one, or the top one if the hang says so. */
export function cutHang(boxes: readonly { readonly model: string }[], options: CutOptions): readonly CutLoad[] {
  const runs: number[][] = [];
  boxes.forEach((box, index) => {
    const run = runs.at(-1);
    const fits = run?.every((position) => options.mayShare(boxes[position - 1]!.model, box.model));
    if (run && fits) run.push(index + 1);
    else runs.push([index + 1]);
  });
  return runs.flatMap((run) => slices(run, options));
}

function slices(run: readonly number[], { capacity, partLoad }: CutOptions): CutLoad[] {
  const first = partLoad === 'top' ? run.length % capacity || capacity : capacity;
  const loads: CutLoad[] = [{ positions: run.slice(0, first) }];
  for (let start = first; start < run.length; start += capacity) loads.push({ positions: run.slice(start, start + capacity) });
  return loads;
}
