import type { Hang } from '#tour-file';

const words: Partial<Record<keyof Hang, string>> = {
  name: 'name',
  mirrorOf: 'whose mirror it is',
  grid: 'grid',
  gridSerial: 'serial of the grid',
  goesUp: 'when it goes up',
  tiltDownDeg: 'tilt',
  trimHeightMm: 'trim height',
  trimTo: 'what the trim height measures to',
  deckHeightMm: 'deck below it',
  pointHeightMm: 'height of the points',
  stage: 'place on the stage',
  liftTiltDownDeg: 'tilt while boxes are added',
  tiltNeeds: 'tilts that the aim may ask for',
  picks: 'picks',
  pullBack: 'pull-back',
  frames: 'tilt plates and adapters',
  secondary: 'secondary suspension',
  boxes: 'boxes',
  extras: 'what hangs on it beside',
  loom: 'loom',
  partLoad: 'cart that is not full',
};

/** A field of a hang as its form calls it. */
export const fieldWord = (field: keyof Hang): string => words[field] ?? field;
