import type { HangPart, RoomPart } from '#trade';
import type { Words } from '../../table/index.js';
import { list, number, trimMarks } from '../parts/index.js';

type RoomTable = Pick<
  Words['findings'],
  'no-headroom' | 'headroom-not-known' | 'below-floor' | 'leg-does-not-fit' | 'hangs-touch' | 'hangs-too-close' | 'no-room-for-cart'
>;

const parts: Record<RoomPart, string> = {
  grid: 'grid up to the hole',
  shackles: 'shackles',
  slings: 'slings',
  hooks: 'hooks of the hoist',
  'hoist body': 'body of the hoist',
  bridle: 'bridle',
};
/** Millimetres as exactly as they are judged. */
const mm = (value: number): string => `${number(value, Math.abs(value - Math.round(value)) < 0.05 ? 0 : 1)} mm`;

const partOf = (part: HangPart): string => {
  if (part.code === 'box') return `box ${part.position}`;
  if (part.code === 'frame') return `frame ${part.id}`;
  return part.code === 'grid' ? 'the grid' : 'a loaded cart rolled in';
};

export const roomFindings: RoomTable = {
  'hangs-touch': ({ subjects: { first, second }, numbers: { overlapMm }, firstPart, secondPart }) =>
    `${first.name}, ${partOf(firstPart)}, and ${second.name}, ${partOf(secondPart)}, stand in one another by ${mm(overlapMm)} as they are drawn. Move or turn one of them.`,
  'hangs-too-close': ({ subjects: { first, second }, numbers: { apartMm, leastMm }, firstPart, secondPart }) =>
    `${first.name}, ${partOf(firstPart)}, and ${second.name}, ${partOf(secondPart)}, come within ${mm(apartMm)} of one another; the show wants ${mm(leastMm)}.`,
  'no-room-for-cart': ({ subjects: { hang }, numbers: { leftMm, freeMm, cartMm }, load }) =>
    `${hang.name}: the cart of ${load} does not roll in. With the hoists drawn in as far as they go ${mm(freeMm)} are free under what hangs before it, and the cart is ${mm(cartMm)} high as it is packed: ${mm(-leftMm)} are missing.`,
  'no-headroom': ({ subjects: { pick }, numbers: { leftMm, pointHeightMm, trimHeightMm }, trimTo, parts: taken }) => {
    const each = taken.map((one) => `${parts[one.part]} ${one.mm === null ? 'not on file' : mm(one.mm)}`);
    return `${pick.name}, hole ${pick.hole}: ${mm(-leftMm)} of height are missing below its point. Point at ${mm(pointHeightMm)}, trim at ${mm(trimHeightMm)} to ${trimMarks[trimTo]}; between them stand ${list(each)}.`;
  },
  'headroom-not-known': ({ subjects: { hang, models }, numbers: { atMostMm } }) =>
    `${hang.name}: no length is on file for ${list(models.map((each) => each.id))}; the height that is left below the points ${atMostMm === null ? 'is not known' : `is at most ${mm(atMostMm)}`}. Measure them.`,
  'below-floor': ({ subjects: { hang }, numbers: { clearanceMm, lowestMm, deckHeightMm, trimHeightMm } }) =>
    deckHeightMm === 0
      ? `${hang.name}: with its trim at ${mm(trimHeightMm)} its lowest point would hang ${mm(-clearanceMm)} below the floor.`
      : `${hang.name}: with its trim at ${mm(trimHeightMm)} its lowest point hangs ${mm(lowestMm)} above the floor, ${mm(-clearanceMm)} lower than the deck at ${mm(deckHeightMm)}.`,
  'leg-does-not-fit': ({ subjects: { pick, models, unmeasured }, numbers: { leg, lengthMm, shortestMm, longestMm }, fromStock }) => {
    const reach = shortestMm === longestMm ? mm(longestMm) : `${mm(shortestMm)} to ${mm(longestMm)}`;
    const silent =
      unmeasured.length === 0 ? '' : ` No length is on file for ${list(unmeasured.map((each) => each.id))}, which counts as nothing.`;
    const made =
      fromStock &&
      (fromStock.shortestMm === fromStock.longestMm
        ? mm(fromStock.longestMm)
        : `${mm(fromStock.shortestMm)} to ${mm(fromStock.longestMm)}`);
    const stock = fromStock
      ? ` On file and long enough: ${list([...fromStock.slings])} with its shackles, ${made}; what it carries is compared once it is chosen.`
      : ' Nothing on file makes that length with its shackles.';
    return `${pick.name}, hole ${pick.hole}: leg ${leg} of the bridle is ${mm(lengthMm)} long as drawn, and its steel (${list(models.map((each) => each.id))}) makes ${reach}. Take steel of that length, or draw the hook where the steel puts it.${stock}${silent}`;
  },
};
