import type { HangClearance, HangResult, PicksResult } from '#pack-plan';
import { type Units, formatLength } from '../tree/index.js';

type Part = HangClearance['firstPart'];

/** What is least free above a cart that rolls in, and how near the next hang comes; nothing where a plan does not say. */
export function roundAbout({ hangs, site }: Pick<PicksResult, 'hangs' | 'site'>, { hang, room }: HangResult, units: Units): string {
  const carts = (room?.rollIns ?? []).reduce<NonNullable<NonNullable<HangResult['room']>['rollIns']>[number] | null>(
    (least, each) => (least && least.leftMm <= each.leftMm ? least : each),
    null,
  );
  const near = (site?.clearances ?? [])
    .filter((each) => each.hang === hang || each.otherHang === hang)
    .reduce<HangClearance | null>((least, each) => (least && least.apartMm <= each.apartMm ? least : each), null);
  return `${carts ? ` ${cartText(carts, units)}` : ''}${near ? ` ${nearText(hangs, hang, near, units)}` : ''}`;
}

function cartText({ load, leftMm, cartMm }: { load: string; leftMm: number; cartMm: number }, units: Units): string {
  const left = leftMm < 0 ? `${formatLength(-leftMm, units)} missing` : `${formatLength(leftMm, units)} free`;
  return `Carts roll in: least room above that of ${load}, ${formatLength(cartMm, units)} high: ${left} with the hoists drawn in.`;
}

function nearText(hangs: PicksResult['hangs'], hang: string, near: HangClearance, units: Units): string {
  const isFirst = near.hang === hang;
  const [own, other] = isFirst ? [near.firstPart, near.secondPart] : [near.secondPart, near.firstPart];
  const id = isFirst ? near.otherHang : near.hang;
  const name = hangs.find((each) => each.hang === id)?.name ?? id;
  const apart = near.apartMm < 0 ? `in one another by ${formatLength(-near.apartMm, units)}` : formatLength(near.apartMm, units);
  return `Nearest other hang: ${name}, ${apart} (${partText(own)} here, ${partText(other)} there).`;
}

const partText = (part: Part): string => {
  if (part.code === 'box') return `box ${part.position}`;
  if (part.code === 'frame') return `frame ${part.id}`;
  return part.code === 'grid' ? 'grid' : 'a cart rolled in';
};
