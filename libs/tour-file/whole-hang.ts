import type { Hang, Show } from './tour.js';

/** The hangs of a show with what a mirror takes from its original; a mirror never takes serials. */
export function wholeHangs(show: Show): readonly Hang[] {
  return show.hangs.map((hang) => {
    const original = show.hangs.find((each) => each.id === hang.mirrorOf);
    return original ? mirrored(hang, original) : hang;
  });
}

function mirrored(hang: Hang, original: Hang): Hang {
  return {
    ...hang,
    grid: original.grid,
    tiltDownDeg: original.tiltDownDeg,
    loom: original.loom,
    extras: original.extras,
    partLoad: original.partLoad,
    picks: original.picks.map(({ hoistSerial: _serial, ...pick }) => pick),
    boxes: original.boxes.map(({ serial: _serial, ...box }) => box),
    stage: hang.stage ?? (original.stage && { xMm: original.stage.xMm, yMm: -original.stage.yMm, azimuthDeg: -original.stage.azimuthDeg }),
  };
}
