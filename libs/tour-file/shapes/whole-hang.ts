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
    pointHeightMm: hang.pointHeightMm ?? original.pointHeightMm,
    trimTo: hang.trimTo ?? original.trimTo,
    deckHeightMm: hang.deckHeightMm ?? original.deckHeightMm,
    extras: original.extras,
    partLoad: original.partLoad,
    liftTiltDownDeg: original.liftTiltDownDeg,
    tiltNeeds: original.tiltNeeds,
    pullBack: original.pullBack,
    frames: original.frames,
    secondary: original.secondary,
    // A shared point is that of one side only; the legs of a bridle change sides.
    picks: original.picks.map(({ hoistSerial: _serial, point: _point, bridle, ...pick }) => ({
      ...pick,
      ...(bridle && { bridle: { ...bridle, legs: bridle.legs.map((leg) => ({ ...leg, yMm: -leg.yMm })) } }),
    })),
    boxes: original.boxes.map(({ serial: _serial, ...box }) => box),
    stage: hang.stage ?? (original.stage && { xMm: original.stage.xMm, yMm: -original.stage.yMm, azimuthDeg: -original.stage.azimuthDeg }),
  };
}
