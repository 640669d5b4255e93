import type { ChainResult } from '../contract/index.js';
import { type PlanInputs, modelOf } from '../inputs/index.js';
import { hangName } from '#tour-file';
import type { ChosenItem } from '../picks/index.js';

/**
 * The chain of every hoist against the heights: the hook must come down to the floor below its point, where the grid is picked up. At trim the hook is
 * at trim height and the length of its slings; the chain between it and the point hangs free, the rest is in the bag. Without a point height on file
 * the point is known to be no lower than the hook at trim, and no more than that is compared.
 */
export function chainsOf(inputs: PlanInputs, chosen: readonly ChosenItem[]): ChainResult[] {
  const { catalogue } = inputs.file;
  return inputs.hangs.flatMap((hang) =>
    hang.picks.map((pick): ChainResult => {
      const hoist = modelOf(catalogue.hoists, pick.hoist);
      const slingsMm = pick.slings.reduce((sum, model) => sum + modelOf(catalogue.slings, model).lengthMm, 0);
      const hookAtTrimMm = hang.trimHeightMm + slingsMm;
      const pointHeightMm = hang.pointHeightMm ?? null;
      const neededM = (pointHeightMm ?? hookAtTrimMm) / 1000;
      const hangingM = pointHeightMm === null ? null : Math.max(0, pointHeightMm - hookAtTrimMm) / 1000;
      return {
        hang: hang.id,
        hangName: hangName(hang),
        hole: pick.hole,
        hoist: hoist.model,
        serial: chosen.find((each) => each.hang === hang.id && each.hole === pick.hole)?.item ?? null,
        onFileM: hoist.chainLengthM,
        neededM,
        pointHeightMm,
        inBagAtTrimM: hangingM === null ? null : hoist.chainLengthM - hangingM,
        enough: hoist.chainLengthM >= neededM,
      };
    }),
  );
}
