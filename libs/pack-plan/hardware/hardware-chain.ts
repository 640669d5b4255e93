import type { ChainResult, HangResult } from '../contract/index.js';
import { type PlanInputs, modelOf } from '../inputs/index.js';
import { hangName } from '#tour-file';
import type { ChosenItem } from '../picks/index.js';

/**
 * The chain of every hoist against the heights: the hook must come down to the floor below its point, where the grid is picked up. At trim the chain
 * between hoist and hook is what the room of the hang leaves; the rest is in the bag. Without a point height on file the point is known to be no lower
 * than the hook at trim, and no more than that is compared.
 */
export function chainsOf(inputs: PlanInputs, chosen: readonly ChosenItem[], hangs: readonly HangResult[]): ChainResult[] {
  const { catalogue } = inputs.file;
  return inputs.hangs.flatMap((hang) => {
    const rooms = hangs.find((each) => each.hang === hang.id)?.room?.picks ?? [];
    return hang.picks.flatMap((pick): ChainResult[] => {
      const hoist = modelOf(catalogue.hoists, pick.hoist);
      const room = rooms.find((each) => each.hole === pick.hole);
      if (!room) return [];
      const neededM = (room.chainToFloorMm ?? room.hookHeightMm) / 1000;
      return [
        {
          hang: hang.id,
          hangName: hangName(hang),
          hole: pick.hole,
          hoist: hoist.model,
          serial: chosen.find((each) => each.hang === hang.id && each.hole === pick.hole)?.item ?? null,
          onFileM: hoist.chainLengthM,
          neededM,
          pointHeightMm: room.pointHeightMm,
          // Where the hang does not fit below its point there is no such place.
          inBagAtTrimM: room.leftMm === null || room.leftMm < 0 ? null : hoist.chainLengthM - room.leftMm / 1000,
          enough: hoist.chainLengthM >= neededM,
        },
      ];
    });
  });
}
